import { CRATE_KG, TRAY_KG } from '#model/analysis/moveDay/practice.ts';
import { boardName } from '../front/boardNames.ts';
import { sayInside } from '../moveDay/CrateTable.tsx';
import type { Day, DayStep } from '../moveDay/dayOf.ts';
import { type Saying, sayBoardsOf, sayStep, sayTwoPeople, sayWaits } from '../moveDay/sayStep.ts';
import { matsIn } from '../plan/reportParts.ts';
import { nameOfArrangement } from '../text/nameOfArrangement.ts';
import { capital } from '../text/sayList.ts';
import { fitPlan, GAP, MOST_TITLE } from './fitPlan.ts';
import { breakRows, drawRows, type FlowRow } from './flow.ts';
import { line, shifted, weights, words } from './marks.ts';
import { moveLayer, moveSigns } from './moveMarks.ts';
import type { PageDraft, PrintInput } from './pageTypes.ts';
import { sheetOf } from './paper.ts';
import { planMarks } from './planMarks.ts';
import { signRows } from './signRows.ts';
import { aboveStrip, stripPage } from './stripPage.ts';
import { type Column, headRow, leading, spaceRow, tableRows, textRows } from './table.ts';
import { tickBox } from './tickBox.ts';
import type { TitleFacts } from './titleBlock.ts';
import { wrapText } from './wrapText.ts';

const WHAT = 'Move day';
const SIZE = 2.7;
const ASIDE = 2.3;
/** mm: box to tick, number, and at the right what it waits for */
const WIDE = { tick: 6, number: 8, when: 30 } as const;

/** The day of the move on paper: the plan with its arrows, the steps to tick, the crates. */
export function movePages(input: PrintInput, facts: TitleFacts): PageDraft[] {
  const { move } = input;
  if (!move || move.steps.length === 0) return [];
  const { from, to } = move.plan;
  const arrangement = `From ${nameOfArrangement(from.arrangement)} to ${nameOfArrangement(to.arrangement)}`;
  return [planPage(input, move, facts), ...listPages(input, move)].map((page) => ({ ...page, arrangement }));
}

function planPage(input: PrintInput, day: Day, facts: TitleFacts): PageDraft {
  const look = { scene: day.plan.to, report: null, measure: input.measure, hasChecks: false, hasRemarks: false, hasUnseen: false };
  const draw = (scale: number) => planMarks({ ...look, layer: moveLayer(day) }, scale);
  const { sheet, plan, scale, form, note } = fitPlan({ input, facts, draw });
  if (form === 'strip') {
    const free = aboveStrip(sheet);
    return { ...stripPage(sheet, WHAT, shifted(plan.marks, free.x, free.y), scale, note), isPlan: true };
  }
  const { inner } = sheet;
  const x = inner.x + plan.width + GAP;
  const width = inner.x + inner.width - x;
  const titleWide = Math.min(width, MOST_TITLE);
  const box = { ...inner, x: x + width - titleWide, width: titleWide };
  const marks = [
    ...shifted(plan.marks, inner.x, inner.y),
    ...drawRows([headRow('The move', width), ...signRows(moveSigns, width)], x, inner.y),
  ];
  return { what: WHAT, sheet, scale, scaleNote: note, isPlan: true, marks, title: { form: 'column', box } };
}

function listPages(input: PrintInput, day: Day): PageDraft[] {
  const sheet = sheetOf(input.choice.paper, false);
  const free = aboveStrip(sheet);
  const width = Math.min(free.width, 190);
  const rows = [...stepRows(input, day, width), spaceRow(4), ...crateRows(input, day, width)];
  return breakRows(rows, [free.height]).map((page) => stripPage(sheet, WHAT, drawRows(page, free.x, free.y)));
}

function stepRows({ measure, report, scene }: PrintInput, day: Day, width: number): FlowRow[] {
  const { plan, names } = day;
  const isShown = scene.arrangement.id === plan.to.arrangement.id;
  const saying: Saying = {
    plan,
    names,
    units: plan.from.classroom.display.units,
    // The checks count the mats of the arrangement that is shown.
    mats: isShown && report ? matsIn(report).length : null,
  };
  const again = headRow('Steps (continued)', width, 3.6);
  // Said once; the steps it is true of begin with "two people".
  const twoPeople = sayTwoPeople(saying.units);
  const steps = day.steps.map((one) => ({ one, said: sayStep(one.step, saying) }));
  const isTwo = steps.some(({ said }) => said.mind.includes(twoPeople));
  return [
    headRow('Steps', width, 5),
    ...[
      'No children in the room until every piece is fastened: what was held by a wall can tip until it is held again.',
      ...(isTwo ? [twoPeople.replace('lift it', 'lift')] : []),
    ].flatMap((text) => textRows(text, width, measure, ASIDE)),
    spaceRow(1),
    ...steps.map(({ one, said }) =>
      stepRow(one, { ...said, mind: said.mind.filter((text) => text !== twoPeople) }, { width, measure, again }),
    ),
  ];
}

interface Look {
  readonly width: number;
  readonly measure: PrintInput['measure'];
  readonly again: FlowRow;
}

function stepRow({ number, after, state }: DayStep, { title, detail, mind }: ReturnType<typeof sayStep>, look: Look): FlowRow {
  const { width, measure, again } = look;
  const x0 = WIDE.tick + WIDE.number;
  const inner = width - x0 - WIDE.when;
  const texts = [
    ...wrapText(title, inner, measure, SIZE, 650).map((text) => ({ text, size: SIZE, weight: 650 })),
    ...[detail, ...mind]
      .filter(Boolean)
      .flatMap((said) => wrapText(said, inner, measure, ASIDE).map((text) => ({ text, size: ASIDE, weight: 400 }))),
  ];
  const when = [after.length === 0 ? '' : sayWaits(after), state.state === 'cannot' ? 'cannot be done' : ''].filter(Boolean);
  const beside = when.flatMap((said) => wrapText(said, WIDE.when - 2, measure, ASIDE));
  const height =
    Math.max(
      texts.reduce((sum, { size }) => sum + leading(size), 0),
      beside.length * leading(ASIDE),
      4,
    ) + 2;
  return {
    height,
    heads: [again],
    draw: (x, y) => {
      let at = y + 0.8;
      const lines = texts.map(({ text, size, weight }) => {
        at += leading(size);
        return words(text, x + x0, at - leading(size) / 2, { size, weight });
      });
      return [
        ...tickBox(x, y + 0.8, state.state === 'done'),
        words(String(number), x + WIDE.tick + 5, y + 0.8 + leading(SIZE) / 2, { size: SIZE, weight: 700, align: 'end' }),
        ...lines,
        ...beside.map((text, i) => words(text, x + width, y + 0.8 + leading(ASIDE) * (i + 0.5), { size: ASIDE, align: 'end' })),
        line(
          [
            { x, y: y + height - 0.4 },
            { x: x + width, y: y + height - 0.4 },
          ],
          { weight: weights.hatch },
        ),
      ];
    },
  };
}

function crateRows({ measure }: PrintInput, day: Day, width: number): FlowRow[] {
  const { plan, names } = day;
  const { crates, byHand } = plan.packed;
  if (crates.length === 0 && byHand.length === 0) return textRows('No shelf has to be emptied: no crate is needed.', width, measure, SIZE);
  const [letter, kg, box] = [12, 16, 17];
  const rest = width - letter - kg - 2 * box;
  const columns: Column[] = [
    { title: 'Crate', width: letter },
    { title: 'Steps inside', width: rest * 0.55 },
    { title: 'Back to', width: rest * 0.45 },
    { title: 'kg', width: kg, align: 'end' },
    { title: 'packed', width: box, align: 'end', draw: (_, x, y) => tickBox(x + box - 5, y - 1.7) },
    { title: 'emptied', width: box, align: 'end', draw: (_, x, y) => tickBox(x + box - 5, y - 1.7) },
  ];
  const cells = crates.map((crate) => [
    crate.letter,
    sayInside(day, crate.materials),
    crate.to ? `${capital(names.name(crate.to.piece))}, ${sayBoardsOf(plan, crate.materials, boardName)}` : 'the table',
    `${crate.unknown > 0 ? 'about ' : ''}${crate.kg.toFixed(1)}`,
  ]);
  const notes = [
    ...(crates.some(({ unknown }) => unknown > 0) ? [`About: a tray of unknown mass counts as ${TRAY_KG} kg.`] : []),
    ...(crates.length > 0
      ? [
          `No crate is heavier than ${day.crateKg} kg unless one tray alone is${day.crateKg === CRATE_KG ? ' (common practice, no source)' : ''}.`,
        ]
      : []),
    ...(byHand.length > 0
      ? [`Too large for a crate, carried by hand: ${byHand.map((id) => plan.from.materialById.get(id)?.name ?? id).join(', ')}.`]
      : []),
  ];
  return [
    headRow('Crates', width, 5),
    ...(crates.length > 0 ? tableRows({ measure, size: ASIDE, columns }, cells) : []),
    spaceRow(1),
    ...notes.flatMap((note) => textRows(note, width, measure, ASIDE)),
  ];
}
