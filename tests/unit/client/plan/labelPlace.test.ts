import { describe, expect, it } from 'vitest';
import { besideLabel, boxOfLabel, type LabelPlace } from '#client/plan/draw/labelPlace.ts';
import { distance } from '#model/geometry/vec.ts';

/** "2 PL" on a shelf 110 px long and 22 px deep, lying west to east. */
const lying: LabelPlace = {
  said: '2 PL',
  size: 11,
  weight: 650,
  center: { x: 300, y: 200 },
  along: { x: 1, y: 0 },
  half: 14,
  long: 110,
  thin: 22,
};

describe('a mark on a thing that has words', () => {
  it('stays where it is when the words are clear of it', () => {
    const p = { x: 340, y: 200 };
    expect(besideLabel(p, lying)).toBe(p);
    const below = { x: 300, y: 215 };
    expect(besideLabel(below, lying)).toBe(below);
  });

  it.each([
    [300, 325],
    [305, 325],
    [295, 275],
  ])('at %i stands beside the words, at %i on the thing', (x, moved) => {
    expect(besideLabel({ x, y: 201 }, lying)).toEqual({ x: moved, y: 200 });
  });

  it('stands off a thing too short for both, on the side it lay on', () => {
    const short = { ...lying, long: 40 };
    expect(besideLabel({ x: 302, y: 199 }, short)).toEqual({ x: 302, y: 178 });
    expect(besideLabel({ x: 302, y: 201 }, short)).toEqual({ x: 302, y: 222 });
  });

  it('lies on no other words either: it takes the other side', () => {
    expect(besideLabel({ x: 302, y: 199 }, { ...lying, long: 40 }, ({ y }) => y > 200)).toEqual({ x: 302, y: 222 });
    expect(besideLabel({ x: 305, y: 201 }, lying, ({ x }) => x < 300)).toEqual({ x: 275, y: 200 });
  });

  it('goes along a thing that stands turned', () => {
    const turned = { ...lying, along: { x: 0, y: -1 } };
    const moved = besideLabel({ x: 300, y: 196 }, turned);
    expect(moved.x).toBeCloseTo(300);
    expect(distance(moved, turned.center)).toBeCloseTo(25);
    expect(moved.y).toBeLessThan(200);
  });
});

it('the words of a thing that stands turned take as much upright as they did lying', () => {
  expect(boxOfLabel({ ...lying, along: { x: 0, y: -1 } })).toEqual({ x0: 294.5, x1: 305.5, y0: 186, y1: 214 });
});
