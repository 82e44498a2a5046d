import { describe, expect, it } from 'vitest';
import { breakRows, type FlowRow, packRows } from '#client/print/flow.ts';
import { hatchOf } from '#client/print/hatchLines.ts';
import { averageWidth } from '#client/print/measureOnPaper.ts';
import { barFor, barMarks } from '#client/print/scaleBar.ts';
import { cutText, wrapText } from '#client/print/wrapText.ts';

const row = (height: number, more: Partial<FlowRow> = {}): FlowRow => ({ height, draw: () => [], ...more });
const heights = (columns: FlowRow[][]): number[][] => columns.map((rows) => rows.map(({ height }) => height));

describe('rows broken into columns', () => {
  it('fill a column and go on in the next', () => {
    expect(heights(breakRows([row(4), row(4), row(4), row(4)], [10]))).toEqual([
      [4, 4],
      [4, 4],
    ]);
  });
  it('take columns of different heights, the last for all further ones', () => {
    expect(heights(breakRows([row(4), row(4), row(4), row(4)], [4, 8]))).toEqual([[4], [4, 4], [4]]);
  });
  it('say their heads again where their part goes on', () => {
    const head = row(2, { isHead: true });
    const again = row(3);
    const rows = [head, ...[1, 2, 3].map(() => row(4, { heads: [again] }))];
    const columns = breakRows(rows, [10]);
    expect(columns.map((column) => column[0])).toEqual([head, again]);
    expect(heights(columns)).toEqual([
      [2, 4, 4],
      [3, 4],
    ]);
  });
  it('leave no head alone at the foot', () => {
    const rows = [row(7), row(2, { isHead: true }), row(2, { isHead: true }), row(4)];
    expect(heights(breakRows(rows, [12]))).toEqual([[7], [2, 2, 4]]);
  });
  it('never begin a column with the air between two parts, nor open one for it', () => {
    const again = row(3);
    expect(heights(breakRows([row(9), row(2, { isGap: true, heads: [again] })], [10]))).toEqual([[9]]);
    expect(heights(breakRows([row(9), row(2, { isGap: true }), row(4)], [10]))).toEqual([[9], [4]]);
    expect(heights(breakRows([row(4), row(2, { isGap: true }), row(4)], [10]))).toEqual([[4, 2, 4]]);
  });
  it('give a row taller than a column one to itself, and lose none', () => {
    expect(heights(breakRows([row(4), row(30), row(4)], [10]))).toEqual([[4], [30], [4]]);
  });
});

describe('boxes packed on pages', () => {
  const box = (width: number, height: number) => ({ width, height });
  it('fill rows, then pages, in their order', () => {
    const pages = packRows([box(92, 25), box(92, 25), box(60, 25), box(92, 25), box(92, 25)], { width: 190, height: 51 }, 0);
    expect(pages.map((page) => page.map(({ x, y }) => [x, y]))).toEqual([
      [
        [0, 0],
        [92, 0],
        [0, 25],
        [60, 25],
      ],
      [[0, 0]],
    ]);
  });
  it('keep a gap between them, none at the edge', () => {
    const [page] = packRows([box(90, 20), box(94, 20)], { width: 190, height: 100 }, 6);
    expect(page?.map(({ x }) => x)).toEqual([0, 96]);
  });
  it('lay one that is too large by itself', () => {
    expect(packRows([box(10, 10), box(300, 300), box(10, 10)], { width: 190, height: 100 }, 6).length).toBe(3);
  });
});

describe('text on paper', () => {
  const long = 'Cylinders varying in height and diameter and a word of unbelievablelengthwithoutanyblank at its end';
  it.each([15, 20, 40, 200])('is broken so that no line is wider than %s mm and no letter is lost', (width) => {
    const lines = wrapText(long, width, averageWidth, 2.4);
    for (const line of lines) expect(averageWidth(line, 2.4)).toBeLessThanOrEqual(width);
    expect(lines.join('').replaceAll(' ', '')).toBe(long.replaceAll(' ', ''));
  });
  it('keeps a number with its unit', () => {
    const width = averageWidth('needs a width of 0.915', 2.4);
    expect(wrapText('needs a width of 0.915 m.', width, averageWidth, 2.4)).toEqual(['needs a width of', '0.915\u00a0m.']);
  });
  it('says where it was cut', () => {
    expect(cutText('Juniper room', 200, averageWidth, 2)).toBe('Juniper room');
    const cut = cutText('Juniper room', 8, averageWidth, 2);
    expect(cut).toMatch(/^Jun.*…$/);
    expect(averageWidth(cut, 2)).toBeLessThanOrEqual(8);
  });
});

describe('the bar', () => {
  // 1 foot is 304.8 mm exactly (international yard and pound agreement of 1959).
  it.each([
    [50, 'metric', 20, '1 m', '20 mm'],
    [100, 'metric', 10, '1 m', '10 mm'],
    [10, 'metric', 100, '1 m', '100 mm'],
    [20, 'metric', 50, '1 m', '50 mm'],
    [500, 'metric', 20, '10 m', '20 mm'],
    [50, 'imperial', 30.48, "5'", '1.2"'],
    [10, 'imperial', 91.44, "3'", '3.6"'],
  ] as const)('at 1:%s in %s is %s mm for %s', (scale, units, mm, text, onPaper) => {
    const bar = barFor(scale, units);
    expect(bar.long / scale).toBeCloseTo(mm, 6);
    expect(bar).toMatchObject({ text, onPaper });
    const ends = barMarks(5, 5, scale, units).flatMap((mark) => (mark.kind === 'line' && !mark.isClosed ? (mark.points[0]?.x ?? 0) : []));
    expect(ends).toEqual([5, 5 + bar.long / scale]);
  });
});

describe('hatches on paper', () => {
  const square = [
    { x: 0, y: 0 },
    { x: 10, y: 0 },
    { x: 10, y: 10 },
    { x: 0, y: 10 },
  ];
  /** A square with a bay: lines go in and out by turns. */
  const bay = [
    { x: 0, y: 0 },
    { x: 10, y: 0 },
    { x: 10, y: 10 },
    { x: 6, y: 10 },
    { x: 6, y: 4 },
    { x: 4, y: 4 },
    { x: 4, y: 10 },
    { x: 0, y: 10 },
  ];
  it.each(['PL', 'SE', 'MA', 'LA', 'CU'] as const)('of %s stay inside', (code) => {
    const segments = hatchOf(square, code).flatMap((mark) => (mark.kind === 'strokes' ? mark.segments : []));
    expect(segments.length).toBeGreaterThan(4);
    for (const { x, y } of segments.flat()) {
      expect(Math.min(x, y)).toBeGreaterThan(-1e-9);
      expect(Math.max(x, y)).toBeLessThan(10 + 1e-9);
    }
  });
  it('leave a bay bare', () => {
    const segments = hatchOf(bay, 'PL').flatMap((mark) => (mark.kind === 'strokes' ? mark.segments : []));
    const through = segments.filter(([p, q]) => p.y > 4 && Math.min(p.x, q.x) < 5 && Math.max(p.x, q.x) > 5);
    expect(through).toEqual([]);
  });
  it('each area has its own', () => {
    const said = (['PL', 'SE', 'MA', 'LA', 'CU', 'AR'] as const).map((code) => JSON.stringify(hatchOf(square, code)));
    expect(new Set(said).size).toBe(6);
  });
});
