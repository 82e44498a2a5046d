import type { Mark } from './marks.ts';

/** A line or block of a list that is never broken. Heights in mm. */
export interface FlowRow {
  readonly height: number;
  /** Drawn with its upper left corner at a point of the sheet. */
  readonly draw: (x: number, y: number) => readonly Mark[];
  /** Said again at the top where its part goes on in a further column. */
  readonly heads?: readonly FlowRow[];
  /** A head, which is never left alone at the foot of a column. */
  readonly isHead?: boolean;
  /** Air or a rule between rows: left out where it would begin a column. */
  readonly isGap?: boolean;
}

/**
 * Breaks rows into columns. `room`: mm of height of each column, the last for all further ones; rows of one part share
 * their `heads`, which stand again where the part goes on. A row taller than a column has one to itself.
 */
export function breakRows(rows: readonly FlowRow[], room: readonly number[]): FlowRow[][] {
  const columns: FlowRow[][] = [[]];
  let used = 0;
  const free = (): number => (room[Math.min(columns.length, room.length) - 1] ?? 0) - used;
  const column = (): FlowRow[] => columns[columns.length - 1] as FlowRow[];
  const put = (row: FlowRow): void => {
    column().push(row);
    used += row.height;
  };
  rows.forEach((row, i) => {
    const wanted = row.isHead ? row.height + heightAfter(rows, i) : row.height;
    if (wanted > free() + 1e-9 && column().length > 0) {
      if (row.isGap) return;
      columns.push([]);
      used = 0;
      for (const head of row.heads ?? []) put(head);
    }
    put(row);
  });
  return columns;
}

/** mm of what has to stand below a head: the heads after it and the first row. */
function heightAfter(rows: readonly FlowRow[], index: number): number {
  let height = 0;
  for (const row of rows.slice(index + 1)) {
    height += row.height;
    if (!row.isHead) break;
  }
  return height;
}

/** Draws a column's rows one below the other. */
export function drawRows(rows: readonly FlowRow[], x: number, y: number): Mark[] {
  let at = y;
  return rows.flatMap((row) => {
    const marks = row.draw(x, at);
    at += row.height;
    return marks;
  });
}

export interface Packed<T> {
  readonly item: T;
  readonly x: number;
  readonly y: number;
}

/**
 * Lays boxes in rows from left to right, row after row, page after page, in their order (mm). A box larger than the
 * page has one to itself.
 */
export function packRows<T extends { readonly width: number; readonly height: number }>(
  boxes: readonly T[],
  page: { readonly width: number; readonly height: number },
  gap: number,
): Packed<T>[][] {
  const pages: Packed<T>[][] = [];
  let now: Packed<T>[] = [];
  let [x, y, high] = [0, 0, 0];
  for (const item of boxes) {
    if (x > 0 && x + item.width > page.width + 1e-9) {
      x = 0;
      y += high + gap;
      high = 0;
    }
    if (now.length > 0 && y + item.height > page.height + 1e-9) {
      pages.push(now);
      now = [];
      [x, y, high] = [0, 0, 0];
    }
    now.push({ item, x, y });
    x += item.width + gap;
    high = Math.max(high, item.height);
  }
  return now.length > 0 ? [...pages, now] : pages;
}
