import type { FlowRow } from './flow.ts';
import { line, type Mark, type Measure, weights, words } from './marks.ts';
import { wrapText } from './wrapText.ts';

export interface Column {
  readonly title: string;
  /** mm */
  readonly width: number;
  readonly align?: 'start' | 'end';
  /** Marks before or instead of the text, centred at a height. */
  readonly draw?: (row: number, x: number, y: number) => readonly Mark[];
}

interface TableLook {
  readonly measure: Measure;
  readonly size: number;
  readonly columns: readonly Column[];
}

/** mm between lines of a text of a size */
export const leading = (size: number): number => size * 1.28;
const PAD = 1;

const widthOfColumns = (columns: readonly Column[]): number => columns.reduce((sum, { width }) => sum + width, 0);

/** A ruled table as rows that can be broken; its head stands again in each further column. Long texts take several lines. */
export function tableRows(
  { measure, size, columns }: TableLook,
  cells: readonly (readonly string[])[],
  above: readonly FlowRow[] = [],
): FlowRow[] {
  const width = widthOfColumns(columns);
  const under = (x: number, y: number, weight: number): Mark =>
    line(
      [
        { x, y },
        { x: x + width, y },
      ],
      { weight },
    );
  const put = (text: string, { width: wide, align }: Column, x: number, y: number, weight: number): Mark =>
    words(text, align === 'end' ? x + wide - PAD : x, y, { size, weight, align: align ?? 'start' });
  const head: FlowRow = {
    height: leading(size) + 1.6,
    isHead: true,
    heads: above,
    draw: (x, y) => [
      ...across(columns, x, (column, at) => [put(column.title, column, at, y + leading(size) / 2 + 0.5, 400)]),
      under(x, y + leading(size) + 1.2, weights.outline),
    ],
  };
  const heads = [...above, head];
  const rows = cells.map((texts, index): FlowRow => {
    const wrapped = columns.map((column, i) => wrapText(texts[i] ?? '', column.width - PAD, measure, size));
    const most = Math.max(1, ...wrapped.map((lines) => lines.length));
    const height = most * leading(size) + 1.3;
    return {
      height,
      heads,
      draw: (x, y) => [
        ...across(columns, x, (column, at, i) => [
          ...(column.draw?.(index, at, y + leading(size) / 2 + 0.6) ?? []),
          ...(wrapped[i] ?? []).map((text, k) => put(text, column, at, y + leading(size) * (k + 0.5) + 0.6, 400)),
        ]),
        under(x, y + height, weights.hatch),
      ],
    };
  });
  return [head, ...rows];
}

function across(columns: readonly Column[], x: number, draw: (column: Column, x: number, index: number) => readonly Mark[]): Mark[] {
  let at = x;
  return columns.flatMap((column, i) => {
    const marks = draw(column, at, i);
    at += column.width;
    return marks;
  });
}

/** A heading of a list, ruled below. */
export function headRow(text: string, width: number, size = 4): FlowRow {
  return {
    height: size * 1.7,
    isHead: true,
    draw: (x, y) => [
      words(text, x, y + size * 0.8, { size, weight: 650, isTitle: true }),
      line(
        [
          { x, y: y + size * 1.45 },
          { x: x + width, y: y + size * 1.45 },
        ],
        { weight: weights.outline },
      ),
    ],
  };
}

/** A text as rows of one line each, so that it can be broken anywhere. */
export function textRows(text: string, width: number, measure: Measure, size: number, heads: readonly FlowRow[] = []): FlowRow[] {
  return wrapText(text, width, measure, size).map((said) => ({
    height: leading(size),
    heads,
    draw: (x, y) => [words(said, x, y + leading(size) / 2, { size })],
  }));
}

export const spaceRow = (height: number): FlowRow => ({ height, isGap: true, draw: () => [] });
