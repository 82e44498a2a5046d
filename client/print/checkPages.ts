import { checkRows } from './checkRows.ts';
import { breakRows, drawRows } from './flow.ts';
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
  const columns = breakRows(checkRows(input, width), [free.height]);
  return Array.from({ length: Math.ceil(columns.length / count) }, (_, page) =>
    stripPage(
      sheet,
      'Checks',
      columns.slice(page * count, (page + 1) * count).flatMap((rows, i) => drawRows(rows, free.x + i * (width + GAP), free.y)),
    ),
  );
}
