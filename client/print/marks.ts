import type { Box as Bounds } from '#model/geometry/polygon.ts';
import type { Point } from '#model/geometry/vec.ts';

/** Line weights, mm. */
export const weights = { wall: 0.7, openSide: 0.5, outline: 0.25, dimension: 0.18, hatch: 0.1 } as const;

type Fill = 'none' | 'white' | 'black';

interface Line {
  readonly kind: 'line';
  readonly points: readonly Point[];
  readonly isClosed: boolean;
  /** mm; 0: no line */
  readonly weight: number;
  readonly fill: Fill;
  readonly dash: readonly number[];
  /** An outline whose corners stay sharp. */
  readonly isMitred?: boolean;
}
interface Round {
  readonly kind: 'round';
  readonly center: Point;
  readonly radius: number;
  readonly weight: number;
  readonly fill: Fill;
  readonly dash: readonly number[];
}
/** Part of a circle, the short way round. */
interface Arc {
  readonly kind: 'arc';
  readonly center: Point;
  readonly from: Point;
  readonly to: Point;
  readonly weight: number;
}
/** Separate strokes of one weight, such as a hatch. */
interface Strokes {
  readonly kind: 'strokes';
  readonly segments: readonly (readonly [Point, Point])[];
  readonly weight: number;
}
export interface Words {
  readonly kind: 'words';
  readonly text: string;
  /** On the line's middle, at its start, centre or end. */
  readonly at: Point;
  /** mm */
  readonly size: number;
  readonly weight: number;
  readonly align: 'start' | 'middle' | 'end';
  /** radians clockwise */
  readonly angle: number;
  readonly isTitle: boolean;
  readonly isItalic: boolean;
  /** mm of white behind them; 0: none */
  readonly ground: number;
}

/** What stands on paper: black, mm from the sheet's upper left corner. */
export type Mark = Line | Round | Arc | Strokes | Words;

interface LineStyle {
  readonly weight?: number;
  readonly dash?: readonly number[];
}
interface ShapeStyle extends LineStyle {
  readonly fill?: Fill;
  readonly isMitred?: boolean;
}

export const line = (points: readonly Point[], { weight = weights.outline, dash = [] }: LineStyle = {}): Mark => ({
  kind: 'line',
  points,
  isClosed: false,
  weight,
  fill: 'none',
  dash,
});

export const shape = (points: readonly Point[], style: ShapeStyle = {}): Mark => ({
  kind: 'line',
  points,
  isClosed: true,
  weight: style.weight ?? weights.outline,
  fill: style.fill ?? 'none',
  dash: style.dash ?? [],
  ...(style.isMitred && { isMitred: true }),
});

export const rect = (x: number, y: number, width: number, height: number, style: ShapeStyle = {}): Mark =>
  shape(
    [
      { x, y },
      { x: x + width, y },
      { x: x + width, y: y + height },
      { x, y: y + height },
    ],
    style,
  );

export const round = (center: Point, radius: number, style: ShapeStyle = {}): Mark => ({
  kind: 'round',
  center,
  radius,
  weight: style.weight ?? weights.outline,
  fill: style.fill ?? 'none',
  dash: style.dash ?? [],
});

export const arc = (center: Point, from: Point, to: Point, weight: number): Mark => ({ kind: 'arc', center, from, to, weight });
export const strokes = (segments: readonly (readonly [Point, Point])[], weight: number): Mark => ({ kind: 'strokes', segments, weight });

type WordStyle = Partial<Omit<Words, 'kind' | 'text' | 'at'>>;

export const words = (text: string, x: number, y: number, style: WordStyle = {}): Words => ({
  kind: 'words',
  text,
  at: { x, y },
  size: 2.8,
  weight: 400,
  align: 'start',
  angle: 0,
  isTitle: false,
  isItalic: false,
  ground: 0,
  ...style,
});

/** mm that words take at a size (mm) and weight. */
export type Measure = (text: string, size: number, weight?: number, isTitle?: boolean) => number;

const widthOf = (measure: Measure, { text, size, weight, isTitle }: Words): number => measure(text, size, weight, isTitle);

/** The four corners of the room that words take. */
export function cornersOfWords(mark: Words, measure: Measure): Point[] {
  const width = widthOf(measure, mark);
  const left = mark.align === 'start' ? 0 : mark.align === 'middle' ? -width / 2 : -width;
  const half = mark.size * 0.6;
  const [cos, sin] = [Math.cos(mark.angle), Math.sin(mark.angle)];
  const corner = (x: number, y: number): Point => ({ x: mark.at.x + x * cos - y * sin, y: mark.at.y + x * sin + y * cos });
  return [corner(left, -half), corner(left + width, -half), corner(left + width, half), corner(left, half)];
}

function pointsOf(mark: Mark, measure: Measure): readonly Point[] {
  switch (mark.kind) {
    case 'line':
      return mark.points;
    case 'round':
      return [
        { x: mark.center.x - mark.radius, y: mark.center.y - mark.radius },
        { x: mark.center.x + mark.radius, y: mark.center.y + mark.radius },
      ];
    case 'arc':
      return [mark.center, mark.from, mark.to];
    case 'strokes':
      return mark.segments.flat();
    case 'words':
      return cornersOfWords(mark, measure);
  }
}

/** The box (mm) that marks take. */
export function boundsOfMarks(marks: readonly Mark[], measure: Measure): Bounds {
  const box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
  for (const mark of marks) {
    const half = 'weight' in mark && mark.kind !== 'words' ? mark.weight / 2 : 0;
    for (const p of pointsOf(mark, measure)) {
      box.minX = Math.min(box.minX, p.x - half);
      box.minY = Math.min(box.minY, p.y - half);
      box.maxX = Math.max(box.maxX, p.x + half);
      box.maxY = Math.max(box.maxY, p.y + half);
    }
  }
  return box;
}

/** The same marks elsewhere. */
export const shifted = (marks: readonly Mark[], dx: number, dy: number): Mark[] =>
  marks.map((mark) => shiftedMark(mark, (p) => ({ x: p.x + dx, y: p.y + dy })));

function shiftedMark(mark: Mark, to: (p: Point) => Point): Mark {
  switch (mark.kind) {
    case 'line':
      return { ...mark, points: mark.points.map(to) };
    case 'round':
      return { ...mark, center: to(mark.center) };
    case 'arc':
      return { ...mark, center: to(mark.center), from: to(mark.from), to: to(mark.to) };
    case 'strokes':
      return { ...mark, segments: mark.segments.map(([p, q]) => [to(p), to(q)] as const) };
    case 'words':
      return { ...mark, at: to(mark.at) };
  }
}
