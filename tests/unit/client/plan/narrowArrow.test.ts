import { expect, it } from 'vitest';
import { drawNarrowArrow } from '#client/plan/draw/drawMarks.ts';
import type { Pen } from '#client/plan/draw/pen.ts';
import type { NarrowPlace } from '#client/plan/reportParts.ts';
import { canvas } from './canvas.ts';

interface Written {
  readonly text: string;
  readonly x: number;
  readonly y: number;
}

/** A canvas that notes what is written where. */
function noting(written: Written[]): CanvasRenderingContext2D {
  let origin = { x: 0, y: 0 };
  return canvas({
    translate: (x: number, y: number) => (origin = { x, y }),
    fillText: (text: string) => written.push({ text, ...origin }),
  });
}

const level: NarrowPlace = { a: { x: 900, y: 1000 }, b: { x: 1100, y: 1000 }, measured: 200, needed: 915, length: 300, kept: [] };
const label = { x0: 112, x1: 124, y0: 80, y1: 130 };

function wordsOf(place: NarrowPlace, labels: readonly (typeof label)[]): Written[] {
  const written: Written[] = [];
  const pen: Pen = { ctx: noting(written), view: { k: 0.1, x: 0, y: 0 }, units: 'metric', isRightToLeft: false };
  drawNarrowArrow(pen, place, 'should', labels);
  return written;
}

it('the words of a narrow place stand at its arrow, measured above, needed below', () => {
  expect(wordsOf(level, [])).toEqual([
    { text: '0.20', x: 100, y: 89 },
    { text: 'needs', x: 100, y: 111 },
    { text: '0.915', x: 100, y: 123 },
  ]);
});

it('and keep off what is written on a thing beside it', () => {
  const upright: NarrowPlace = { ...level, a: { x: 1000, y: 900 }, b: { x: 1000, y: 1100 } };
  for (const place of [level, upright]) {
    const words = wordsOf(place, [label]);
    expect(words.length).toBeGreaterThan(1);
    for (const { text, x, y } of words) {
      const [from, to] = place === level ? [x - text.length * 3, x + text.length * 3] : [x, x + text.length * 6];
      expect(from > label.x1 || to < label.x0 || y - 6 > label.y1 || y + 6 < label.y0, text).toBe(true);
    }
    // Nor do they hide the arrow itself.
    for (const { text, x, y } of words)
      if (place === upright) expect(x > 102 || x + text.length * 6 < 98 || y + 6 < 90 || y - 6 > 110, text).toBe(true);
    // Not far away either: it is still that arrow's.
    expect(Math.hypot((words[0]?.x ?? 0) - 100, (words[0]?.y ?? 0) - 100)).toBeLessThan(70);
  }
});

it('and off the arrow, where words stand just right of it: left of it then', () => {
  const upright: NarrowPlace = { ...level, a: { x: 1000, y: 700 }, b: { x: 1000, y: 1300 } };
  const table = { x0: 103, x1: 190, y0: 40, y1: 160 };
  for (const { text, x } of wordsOf(upright, [table])) expect(x + text.length * 6, text).toBeLessThanOrEqual(98);
});
