import { colours, lines } from '#client/styles/tokens.ts';
import { boundingBox } from '#model/geometry/polygon.ts';
import { add, distance, lerp, type Point, scale, sub, unit } from '#model/geometry/vec.ts';
import type { SceneRoom, SceneWall } from '#model/scene/types.ts';
import { cutsOf, isOutermost } from '../outerStrings.ts';
import { wallPx } from './drawRoom.ts';
import { at, figure, line, type Pen, readable, widthOf, write } from './pen.ts';
import { boxOfWords, firstClear, type WordBox, type WordPlace } from './wordPlace.ts';

export interface DimensionStyle {
  readonly colour?: string;
  readonly size?: number;
  readonly weight?: number;
  readonly ground?: string;
  /** The figure is left to the words beside the drawing. */
  readonly isBare?: boolean;
  /** Said in whole mm near this length. */
  readonly near?: number;
  /** px that figures drawn before take; this one keeps clear of them where it can, and is added. */
  readonly taken?: WordBox[];
}

/** Where a figure that does not fit may stand beside its line, the first that is clear: in its own distance, to either side. */
const BESIDE = [1, -1, 2.3, -2.3] as const;

/** A dimension string: line, slashed ends, figure on it. Points of the screen; `mm` is what it says. */
export function drawDimension(pen: Pen, from: Point, to: Point, mm: number, style: DimensionStyle = {}): void {
  const { colour = colours.ink, size = 10.5, weight = 400, ground = colours.paper } = style;
  line(pen, from, to, { colour, width: lines.dimension });
  for (const end of [from, to]) line(pen, { x: end.x - 3.5, y: end.y + 3.5 }, { x: end.x + 3.5, y: end.y - 3.5 }, { colour, width: 1.2 });
  if (style.isBare) return;
  const text = figure(pen, mm, style.near);
  const words = { width: widthOf(pen, text, size, weight), size };
  const fits = words.width + 10 < distance(from, to);
  const along = unit(sub(to, from));
  const isUpright = Math.abs(along.y) > 0.7;
  const middle = lerp(from, to, 0.5);
  if (fits) {
    write(pen, text, middle, { size, weight, colour, angle: readable(along.x, along.y), ground });
    const [wide, high] = isUpright ? [size, words.width] : [words.width, size];
    style.taken?.push(boxOfWords({ where: middle, align: 'center' }, wide, high));
    return;
  }
  // A figure that does not fit between its ends stands beside the line.
  const places = BESIDE.map((times): WordPlace => {
    const beside = add(middle, scale({ x: -along.y, y: along.x }, -(size / 2 + 5) * times));
    const where = isUpright ? { x: beside.x + (beside.x > middle.x ? 8 : -8), y: beside.y } : beside;
    return { where, align: 'center' };
  });
  const place = firstClear(places, words, style.taken ?? []) ?? (places[0] as WordPlace);
  write(pen, text, place.where, { size, weight, colour, ground });
  style.taken?.push(boxOfWords(place, words.width, size));
}

/** px from the wall to its string, past the name of where its door leads */
const PAST_NAME = { upright: 46, level: 26 } as const;

/** Strings outside the outermost walls: each wall's length, and closer in the pieces its openings cut it into. */
export function drawOuterStrings(pen: Pen, room: SceneRoom): void {
  const thick = wallPx(pen);
  const bounds = boundingBox(room.outline);
  for (const wall of room.walls) {
    if (!isOutermost(wall, bounds)) continue;
    const long = distance(wall.a, wall.b);
    const hasName = room.openings.some((opening) => opening.wall === wall && opening.raw.name);
    const cuts = hasName ? [] : cutsOf(room, wall);
    if (hasName) drawString(pen, wall, 0, long, thick + (Math.abs(wall.inward.x) > 0.5 ? PAST_NAME.upright : PAST_NAME.level));
    else drawString(pen, wall, 0, long, thick + (cuts.length > 2 ? 30 : 16));
    if (cuts.length > 2) drawChain(pen, wall, cuts, thick + 13);
  }
}

function drawChain(pen: Pen, wall: SceneWall, cuts: readonly number[], off: number): void {
  cuts.slice(1).forEach((to, i) => {
    const from = cuts[i] ?? 0;
    if ((to - from) * pen.view.k > 8) drawString(pen, wall, from, to, off);
  });
}

function drawString(pen: Pen, wall: SceneWall, from: number, to: number, off: number): void {
  const along = unit(sub(wall.b, wall.a));
  const shift = scale(wall.inward, -off);
  const point = (mm: number): Point => add(at(pen, add(wall.a, scale(along, mm))), shift);
  const long = to - from;
  if (long * pen.view.k < 12) return;
  const fits = widthOf(pen, figure(pen, long), 10.5) + 10 < long * pen.view.k;
  if (fits) drawDimension(pen, point(from), point(to), long);
}
