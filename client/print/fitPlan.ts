import type { PageDraft, PrintInput } from './pageTypes.ts';
import { type Box, type Sheet, sayPaper, sheetOf } from './paper.ts';
import type { PlanOnPaper } from './planMarks.ts';
import { aboveStrip } from './stripPage.ts';
import { type TitleFacts, titleColumn } from './titleBlock.ts';

/** The scale that is wanted first; a room that is too large takes the next. */
const SCALES = [50, 100, 200, 500, 1000, 2000, 5000, 10_000] as const;
/** mm between the plan and what stands beside it */
export const GAP = 3;
/** mm of width of a title in a column */
const LEAST_TITLE = 33;
export const MOST_TITLE = 98;

export interface Fit {
  readonly scale: number;
  readonly sheet: Sheet;
  readonly form: PageDraft['title']['form'];
  readonly plan: PlanOnPaper;
  /** Why it is not the scale that was wanted; "": it is */
  readonly note: string;
}

interface Asked {
  readonly input: Pick<PrintInput, 'choice' | 'measure'>;
  readonly facts: TitleFacts;
  readonly draw: (scale: number) => PlanOnPaper;
}

/** The largest scale at which a plan and its title have room, lying before upright. */
export function fitPlan(asked: Asked): Fit {
  const fit = fitOn(asked);
  return { ...fit, note: fit.scale === SCALES[0] ? '' : noteOf(asked, fit.scale) };
}

function fitOn({ input, facts, draw }: Asked): Omit<Fit, 'note'> {
  let last: Omit<Fit, 'note'> | null = null;
  for (const scale of SCALES) {
    const plan = draw(scale);
    for (const [isLying, form] of [
      [true, 'column'],
      [true, 'strip'],
      [false, 'strip'],
    ] as const) {
      const fit = { scale, sheet: sheetOf(input.choice.paper, isLying), form, plan };
      last = fit;
      if (hasRoom(fit, facts, input)) return fit;
    }
  }
  return last as Omit<Fit, 'note'>;
}

function hasRoom({ sheet, form, plan, scale }: Omit<Fit, 'note'>, facts: TitleFacts, input: Asked['input']): boolean {
  if (form === 'strip') {
    const free = aboveStrip(sheet);
    return plan.width <= free.width && plan.height <= free.height;
  }
  const { inner } = sheet;
  const width = inner.width - plan.width - GAP;
  if (plan.height > inner.height || width < LEAST_TITLE) return false;
  return heightOfTitle({ ...inner, width: Math.min(width, MOST_TITLE) }, facts, scale, '', input) <= inner.height;
}

export const heightOfTitle = (box: Box, facts: TitleFacts, scale: number, scaleNote: string, { measure }: Asked['input']): number =>
  titleColumn(box, facts, { what: 'Room', scale, scaleNote, isPlan: true, number: 88, count: 88 }, measure).height;

/** "too large for 1:50 on A4; A3 takes it at 1:50" */
function noteOf(asked: Asked, scale: number): string {
  const { choice } = asked.input;
  const larger = ({ a4: 'a3', letter: 'tabloid' } as const)[choice.paper as 'a4' | 'letter'];
  const note = `too large for 1:50 on ${sayPaper(choice.paper)}`;
  if (!larger) return note;
  const there = fitOn({ ...asked, input: { ...asked.input, choice: { ...choice, paper: larger } } }).scale;
  return there < scale ? `${note}; ${sayPaper(larger)} takes it at 1:${there}` : note;
}
