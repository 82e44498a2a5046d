import type { SceneSide } from '#model/scene/types.ts';
import { shownSide } from '../front/shownSide.ts';
import { checkRows } from './checkRows.ts';
import { fitPlan, GAP, heightOfTitle, MOST_TITLE } from './fitPlan.ts';
import { breakRows, drawRows, type FlowRow } from './flow.ts';
import { frontOnPaper } from './frontMarks.ts';
import { trayTable } from './frontPages.ts';
import { type Mark, shifted } from './marks.ts';
import type { PageDraft, PrintInput } from './pageTypes.ts';
import { type Box, isLarge, type Sheet, sheetOf } from './paper.ts';
import { type PlanOnPaper, planMarks } from './planMarks.ts';
import { remarkRows } from './remarkMarks.ts';
import { legendRows, shelfListRows } from './shelfListRows.ts';
import { aboveStrip, stripPage } from './stripPage.ts';
import { textRows } from './table.ts';
import type { TitleFacts } from './titleBlock.ts';

/** mm: a list beside the plan; a list and the checks; the trays beside a front */
const LEAST = { list: 68, two: 150, trays: 44 } as const;

/** mm of letters: as written, or smaller where the whole list then stands beside the plan */
const SIZES = [2.4, 2.1] as const;
type ListOf = (width: number, size: number) => FlowRow[];

/** The plan with its list on one sheet; the list goes on to further ones where it has no room. */
export function roomPages(input: PrintInput, facts: TitleFacts): PageDraft[] {
  const draw = (scale: number): PlanOnPaper => planMarks({ ...input, ...input.choice, hasChecks: input.choice.hasMarks }, scale);
  const { sheet, plan, scale, form, note: scaleNote } = fitPlan({ input, facts, draw });
  const list: ListOf = (width, size) => [
    ...shelfListRows(input, width, size),
    ...(input.choice.hasRemarks ? remarkRows(input.scene, input.measure, width, size) : []),
    ...outsideRows(plan, width, input),
  ];
  if (form === 'strip') {
    const free = aboveStrip(sheet);
    const page = { ...stripPage(sheet, 'Room', shifted(plan.marks, free.x, free.y), scale, scaleNote), isPlan: true };
    return [page, ...listPages(input, list)];
  }
  const { inner } = sheet;
  const x = inner.x + plan.width + GAP;
  const panel: Box = { x, y: inner.y, width: inner.x + inner.width - x, height: inner.height };
  const titleWide = Math.min(panel.width, MOST_TITLE);
  const titleBox: Box = { ...panel, x: panel.x + panel.width - titleWide, width: titleWide };
  const title = heightOfTitle(titleBox, facts, scale, scaleNote, input);
  const beside = besidePlan(input, list, panel, panel.height - title - GAP);
  const marks = [...shifted(plan.marks, inner.x, inner.y), ...beside.marks, ...frontBelow(input, sheet, plan)];
  const page: PageDraft = { what: 'Room', sheet, scale, scaleNote, isPlan: true, marks, title: { form: 'column', box: titleBox } };
  return [page, ...(beside.isListDone ? [] : listPages(input, list))];
}

/** The lists in the column beside the plan, as far as there is room. `height`: mm above the title. */
function besidePlan(input: PrintInput, list: ListOf, panel: Box, height: number): { marks: Mark[]; isListDone: boolean } {
  if (panel.width < LEAST.two) {
    const rows = panel.width < LEAST.list ? null : wholeList(list, panel.width, height);
    const legend = breakRows(legendRows(input, panel.width), [height]);
    const shown = rows ?? (legend.length === 1 ? (legend[0] ?? []) : []);
    return { marks: drawRows(shown, panel.x, panel.y), isListDone: rows !== null };
  }
  const wide = (panel.width - 2 * GAP) / 2;
  // The title stands at the right of the foot: a list that reaches over it ends above it.
  const rows = wholeList(list, wide, wide + GAP > panel.width - MOST_TITLE ? height : panel.height);
  const x = panel.x + wide + 2 * GAP;
  return {
    marks: [...(rows ? drawRows(rows, panel.x, panel.y) : []), ...checksBeside(input, x, panel.y, wide, height)],
    isListDone: rows !== null,
  };
}

/** The list in one column; null: it has no room there. */
function wholeList(list: ListOf, width: number, height: number): FlowRow[] | null {
  for (const size of SIZES) {
    const columns = breakRows(list(width, size), [height]);
    if (columns.length === 1) return columns[0] ?? [];
  }
  return null;
}

/** The checks beside the plan; where there are more than have room, the last line says so. */
function checksBeside(input: PrintInput, x: number, y: number, width: number, height: number): Mark[] {
  const rows = checkRows(input, width, true);
  const [first = [], ...rest] = breakRows(rows, [height]);
  if (rest.length === 0) return drawRows(first, x, y);
  const says = textRows('The rest stands in the list of checks.', width, input.measure, 2.4);
  const [kept = []] = breakRows(rows, [height - (says[0]?.height ?? 0)]);
  return drawRows([...kept, ...says], x, y);
}

/** On a large sheet the front that is shown on the screen stands under the plan with its trays, where it has room. */
function frontBelow(input: PrintInput, { inner, paper }: Sheet, plan: PlanOnPaper): Mark[] {
  if (!isLarge(paper)) return [];
  const side: SceneSide | null = shownSide(input.scene, input.frontOf);
  const high = inner.height - plan.height - GAP;
  if (!side) return [];
  for (const scale of [10, 20]) {
    const front = frontOnPaper(input, side, scale);
    if (front.width > plan.width || front.height > high) continue;
    const y = inner.y + inner.height - front.height;
    const room = plan.width - front.width - 2 * GAP;
    const table = room >= LEAST.trays ? trayTable(input, front, room) : null;
    return [
      ...shifted(front.marks, inner.x, y),
      ...(table && table.height <= high ? shifted(table.marks, inner.x + front.width + 2 * GAP, y) : []),
    ];
  }
  return [];
}

function outsideRows({ outside }: PlanOnPaper, width: number, { measure }: PrintInput): FlowRow[] {
  if (outside.length === 0) return [];
  return textRows(`Far outside the walls and not drawn: ${outside.join(', ')}.`, width, measure, 2.4);
}

function listPages({ choice }: PrintInput, list: ListOf): PageDraft[] {
  const sheet = sheetOf(choice.paper, false);
  const free = aboveStrip(sheet);
  return breakRows(list(Math.min(free.width, 190), SIZES[0]), [free.height]).map((rows) =>
    stripPage(sheet, 'Shelf list', drawRows(rows, free.x, free.y)),
  );
}
