import type { Person } from '#client/session/types.ts';
import { colours, lines } from '#client/styles/tokens.ts';
import { boundingBox } from '#model/geometry/polygon.ts';
import { add, distance, lerp, type Point, scale } from '#model/geometry/vec.ts';
import type { SceneBody } from '#model/scene/types.ts';
import { ringOf } from './drawShape.ts';
import { labelPlace } from './labelPlace.ts';
import { at, fill, type Pen, path, stroke, widthOf, write } from './pen.ts';

const edgeDash: Readonly<Record<Person['edge'], readonly number[]>> = { solid: [], dashed: [5, 3], dotted: [1.5, 2.5] };
const ROOM = 5;
/** px from the ends of a narrow place to the ring round it */
const RING = 8;

/** Somebody else holds this: their edge round it and their initials on it. */
export function drawHold(pen: Pen, body: SceneBody, person: Person): void {
  const box = boundingBox(ringOf(pen, body));
  const dash = edgeDash[person.edge];
  path(pen, rect(box.minX - ROOM, box.minY - ROOM, box.maxX - box.minX + 2 * ROOM, box.maxY - box.minY + 2 * ROOM));
  stroke(pen, { width: 1.5, dash });
  const wide = widthOf(pen, person.initials, 11, 700) + 14;
  const x = box.minX - ROOM;
  const y = box.minY - ROOM - 16;
  path(pen, rect(x, y, wide, 16));
  fill(pen, colours.paper);
  stroke(pen, { width: 1.5, dash });
  write(pen, person.initials, { x: x + wide / 2, y: y + 8 }, { size: 11, weight: 700 });
}

/** The chosen thing: a blue line round it. */
export function drawChosen(pen: Pen, ring: readonly Point[]): void {
  path(pen, ring);
  stroke(pen, { colour: colours.blue, width: lines.selection });
}

/** Pointed at: a heavy line round it with air between, seen from across the room. */
export function drawPointed(pen: Pen, body: SceneBody): void {
  const { minX, minY, maxX, maxY } = boundingBox(ringOf(pen, body));
  path(pen, rect(minX - ROOM, minY - ROOM, maxX - minX + 2 * ROOM, maxY - minY + 2 * ROOM));
  stroke(pen, { colour: colours.paper, width: 6 });
  stroke(pen, { colour: colours.blue, width: 3 });
}

/** Pointed at: a ring round a narrow place, both its ends within it. */
export function drawPointedPlace(pen: Pen, from: Point, to: Point): void {
  const [a, b] = [at(pen, from), at(pen, to)];
  const middle = lerp(a, b, 0.5);
  pen.ctx.beginPath();
  pen.ctx.arc(middle.x, middle.y, distance(a, b) / 2 + RING, 0, 2 * Math.PI);
  stroke(pen, { colour: colours.paper, width: 6 });
  stroke(pen, { colour: colours.blue, width: 3 });
}

/** The number of a thing that is too small for it on the screen, behind its back. */
export function drawNumberBehind(pen: Pen, body: SceneBody, number: string): void {
  if (labelPlace(pen, body, number, 650)) return;
  const { back } = body.edges;
  const foot = at(pen, lerp(back.a, back.b, 0.5));
  write(pen, number, add(foot, scale(back.outward, 11)), { size: 11.5, weight: 650, colour: colours.blue, ground: colours.leaf });
}

const rect = (x: number, y: number, width: number, height: number): Point[] => [
  { x, y },
  { x: x + width, y },
  { x: x + width, y: y + height },
  { x, y: y + height },
];
