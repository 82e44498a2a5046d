import { sayArea } from '#model/units/sayLength.ts';
import { nameOfArrangement } from '../text/nameOfArrangement.ts';
import { countOf, sayAges } from '../text/sayAges.ts';
import { sayDay } from '../text/sayDay.ts';
import { checkPages } from './checkPages.ts';
import { frontPages } from './frontPages.ts';
import { labelPages } from './labelPages.ts';
import type { Mark, Measure } from './marks.ts';
import { movePages } from './movePages.ts';
import type { PageDraft, PrintInput, PrintPage } from './pageTypes.ts';
import { roomPages } from './roomPages.ts';
import { type TitleFacts, titleColumn, titleStrip } from './titleBlock.ts';

/** Every page of what was chosen, numbered. */
export function pagesOf(input: PrintInput): PrintPage[] {
  const { choice, measure } = input;
  const facts = factsOf(input);
  const drafts = [
    ...(choice.isMove ? movePages(input, facts) : []),
    ...(choice.isRoom ? roomPages(input, facts) : []),
    ...frontPages(input),
    ...labelPages(input),
    ...(choice.isChecks ? checkPages(input) : []),
  ];
  return drafts.map((draft, i) => ({
    key: `${i}`,
    what: draft.what,
    sheet: draft.sheet,
    scale: draft.scale,
    note: draft.scaleNote,
    marks: [...draft.marks, ...titleOf(draft, facts, i + 1, drafts.length, measure)],
  }));
}

function titleOf(draft: PageDraft, shown: TitleFacts, number: number, count: number, measure: Measure): Mark[] {
  const facts = draft.arrangement === undefined ? shown : { ...shown, arrangement: draft.arrangement };
  const of = { what: draft.what, scale: draft.scale, scaleNote: draft.scaleNote, isPlan: draft.isPlan === true, number, count };
  return draft.title.form === 'strip'
    ? titleStrip(draft.title.box, facts, of, measure)
    : titleColumn(draft.title.box, facts, of, measure).marks;
}

function factsOf({ scene, today }: PrintInput): TitleFacts {
  const { classroom, arrangement, room } = scene;
  const { groups } = classroom.children;
  const facts = [sayAges(groups), `${countOf(groups)} enrolled`, `${sayArea(room.area, classroom.display.units)} inside`];
  return {
    className: classroom.name || 'Class without a name',
    facts: facts.filter(Boolean).join(' · '),
    arrangement: nameOfArrangement(arrangement),
    day: sayDay(today),
    units: classroom.display.units,
  };
}
