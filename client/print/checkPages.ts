import { checkRows } from './checkRows.ts';
import { breakRows, drawRows, type FlowRow } from './flow.ts';
import type { PageDraft, PrintInput } from './pageTypes.ts';
import { isLarge, sheetOf } from './paper.ts';
import { aboveStrip, stripPage } from './stripPage.ts';

const GAP = 8;

/** The list of checks: upright on a small sheet, in two columns on a large one that lies. */
export function checkPages(input: PrintInput): PageDraft[] {
  const { paper } = input.choice;
  const count = isLarge(paper) ? 2 : 1;
  const sheet = sheetOf(paper, count === 2);
  const free = aboveStrip(sheet);
  const width = (free.width - (count - 1) * GAP) / count;
  const columns = columnsOf(checkRows(input, width), free.height);
  return Array.from({ length: Math.ceil(columns.length / count) }, (_, page) =>
    stripPage(
      sheet,
      'Checks',
      columns.slice(page * count, (page + 1) * count).flatMap((rows, i) => drawRows(rows, free.x + i * (width + GAP), free.y)),
    ),
  );
}

/** mm: a column that holds no more than this is worth closer gaps, where it is saved by them */
const FEW = 30;
const CLOSER = 0.6;

function columnsOf(rows: readonly FlowRow[], high: number): FlowRow[][] {
  const columns = breakRows(rows, [high]);
  const last = columns.at(-1) ?? [];
  if (columns.length === 1 || last.reduce((sum, { height }) => sum + height, 0) > FEW) return columns;
  const closer = breakRows(
    rows.map((row) => (row.isGap ? { ...row, height: row.height * CLOSER } : row)),
    [high],
  );
  return closer.length < columns.length ? closer : columns;
}
