import { add, distance, type Point, scale, sub, unit } from '#model/geometry/vec.ts';
import type { SceneBody } from '#model/scene/types.ts';
import { at, type Pen, widthOf } from './pen.ts';
import { boxAround, type WordBox } from './wordPlace.ts';

/** Where a thing's words stand on the screen, px: centred, along its long side. */
export interface LabelPlace {
  readonly said: string;
  readonly size: number;
  readonly weight: number;
  readonly center: Point;
  readonly along: Point;
  /** half the words' width */
  readonly half: number;
  /** the thing's own sides on the screen */
  readonly long: number;
  readonly thin: number;
}

/** Words that fit on a thing: what does not is left out from its end, the number last. null: none fit. */
export function labelPlace(pen: Pen, body: SceneBody, text: string, weight: number, short = text.split(' ')[0] ?? ''): LabelPlace | null {
  if (!text) return null;
  const isWide = body.width >= body.depth;
  const edge = isWide ? body.edges.front : body.edges.left;
  const a = at(pen, edge.a);
  const b = at(pen, edge.b);
  const long = distance(a, b);
  const thin = (isWide ? body.depth : body.width) * pen.view.k;
  if (thin < 9) return null;
  const size = Math.max(10, Math.min(11.5, thin - 3));
  for (const said of [text, short]) {
    const width = widthOf(pen, said, size, weight);
    if (width + 6 < long) return { said, size, weight, center: at(pen, body.center), along: unit(sub(b, a)), half: width / 2, long, thin };
  }
  return null;
}

/** px: half a mark, and the air beside it */
const MARK = 7;
const AIR = 4;

/**
 * Where a mark stands that would lie on a thing's words: beside them on the thing, or off it where the thing is too short;
 * of these the first that `isClear` of other words.
 */
export function besideLabel(p: Point, label: LabelPlace, isClear: (place: Point) => boolean = () => true): Point {
  const { along, center, half, long, thin, size } = label;
  const across = { x: -along.y, y: along.x };
  const from = sub(p, center);
  const u = from.x * along.x + from.y * along.y;
  const v = from.x * across.x + from.y * across.y;
  if (Math.abs(u) >= half + MARK || Math.abs(v) >= size / 2 + MARK) return p;
  const beside = half + MARK + AIR;
  const side = u < 0 ? -1 : 1;
  const off = (v < 0 ? -1 : 1) * (thin / 2 + MARK + AIR);
  const onThing = beside + MARK <= long / 2 ? [side, -side].map((end) => add(center, scale(along, end * beside))) : [];
  const offThing = [off, -off].map((far) => add(add(center, scale(along, u)), scale(across, far)));
  const places = [...onThing, ...offThing];
  return places.find(isClear) ?? places[0] ?? p;
}

/** What a thing's words take on the screen. */
export function boxOfLabel({ center, along, half, size }: LabelPlace): WordBox {
  const across = { x: -along.y, y: along.x };
  return boxAround([-1, 1].flatMap((i) => [-1, 1].map((j) => add(add(center, scale(along, i * half)), scale(across, (j * size) / 2)))));
}
