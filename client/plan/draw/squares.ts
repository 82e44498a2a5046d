import type { Point } from '#model/geometry/vec.ts';

/** Things at points of the screen, found again by the squares round a point: of hundreds only those near are looked at. */
export interface Squares<T> {
  add(p: Point, one: T): void;
  /** All within `size` px of p, and some a little farther, in no order. */
  near(p: Point): T[];
}

/** Squares in a row; a row more begins a new number. */
const ROW = 2 ** 16;

export function squaresOf<T>(size: number): Squares<T> {
  const squares = new Map<number, T[]>();
  const numberOf = ({ x, y }: Point): number => Math.floor(y / size) * ROW + Math.floor(x / size);
  return {
    add(p, one) {
      const number = numberOf(p);
      const here = squares.get(number);
      if (here) here.push(one);
      else squares.set(number, [one]);
    },
    near(p) {
      const found: T[] = [];
      const middle = numberOf(p);
      for (let row = -ROW; row <= ROW; row += ROW)
        for (let column = -1; column <= 1; column++) for (const one of squares.get(middle + row + column) ?? []) found.push(one);
      return found;
    },
  };
}
