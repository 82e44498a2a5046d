import type { Point } from '#model/geometry/vec.ts';

/** px on the screen */
export interface WordBox {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

export interface WordPlace {
  readonly where: Point;
  readonly align: 'left' | 'right' | 'center';
}

/** px kept free round words */
const AIR = 1;

/** What words take that are `width` wide and `size` high (px), on the line at a point. */
export function boxOfWords({ where, align }: WordPlace, width: number, size: number): WordBox {
  const x0 = where.x - (align === 'left' ? 0 : align === 'right' ? width : width / 2);
  return { x0, y0: where.y - size / 2, x1: x0 + width, y1: where.y + size / 2 };
}

export function boxAround(points: readonly Point[]): WordBox {
  const xs = points.map((p) => p.x);
  const ys = points.map((p) => p.y);
  return { x0: Math.min(...xs), y0: Math.min(...ys), x1: Math.max(...xs), y1: Math.max(...ys) };
}

export const cornersOfBox = ({ x0, y0, x1, y1 }: WordBox): Point[] => [
  { x: x0, y: y0 },
  { x: x1, y: y0 },
  { x: x1, y: y1 },
  { x: x0, y: y1 },
];

/** The first place where the words lie over nothing that is taken. Null: none, and the words are better left out. */
export function firstClear(
  places: readonly WordPlace[],
  words: { readonly width: number; readonly size: number },
  taken: readonly WordBox[],
  isAllowed: (box: WordBox) => boolean = () => true,
): WordPlace | null {
  const isClear = (place: WordPlace): boolean => {
    const box = boxOfWords(place, words.width, words.size);
    return isAllowed(box) && !taken.some((other) => overlap(box, other));
  };
  return places.find(isClear) ?? null;
}

const overlap = (p: WordBox, q: WordBox): boolean => p.x0 - AIR < q.x1 && q.x0 < p.x1 + AIR && p.y0 - AIR < q.y1 && q.y0 < p.y1 + AIR;
