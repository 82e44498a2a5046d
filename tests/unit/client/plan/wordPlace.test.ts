import { expect, it } from 'vitest';
import { boxAround, boxOfWords, firstClear, type WordPlace } from '#client/plan/draw/wordPlace.ts';

const right: WordPlace = { where: { x: 20, y: 50 }, align: 'left' };
const left: WordPlace = { where: { x: -20, y: 50 }, align: 'right' };
const words = { width: 60, size: 10 };

it('words take what they are wide and high, to the side they are aligned', () => {
  expect(boxOfWords(right, 60, 10)).toEqual({ x0: 20, y0: 45, x1: 80, y1: 55 });
  expect(boxOfWords(left, 60, 10)).toEqual({ x0: -80, y0: 45, x1: -20, y1: 55 });
  expect(boxOfWords({ where: { x: 0, y: 0 }, align: 'center' }, 60, 10)).toEqual({ x0: -30, y0: -5, x1: 30, y1: 5 });
});

it('words go where they lie over nothing, or nowhere', () => {
  const shelf = boxAround([
    { x: 70, y: 0 },
    { x: 90, y: 52 },
  ]);
  const sink = boxAround([
    { x: -40, y: 40 },
    { x: -30, y: 90 },
  ]);
  expect(firstClear([right, left], words, [])).toBe(right);
  expect(firstClear([right, left], words, [shelf])).toBe(left);
  expect(firstClear([right, left], words, [shelf, sink])).toBeNull();
  expect(firstClear([right, left], words, [], ({ x0 }) => x0 < 0)).toBe(left);
});
