import { boundingBox } from '#model/geometry/polygon.ts';
import { add, distance, type Point, scale, sub, unit } from '#model/geometry/vec.ts';
import type { SceneBody } from '#model/scene/types.ts';
import { sayLength } from '#model/units/sayLength.ts';
import { areasOfShelves } from '../plan/areas.ts';
import { drawFixture } from '../plan/draw/drawFixture.ts';
import { drawArrowHead, drawMat } from '../plan/draw/drawMarks.ts';
import { drawNeatline } from '../plan/draw/drawNeatline.ts';
import { drawOpening, drawOpeningNames } from '../plan/draw/drawOpenings.ts';
import { drawPiece } from '../plan/draw/drawPiece.ts';
import { drawGrid, drawRoom, drawZones } from '../plan/draw/drawRoom.ts';
import { ringOf } from '../plan/draw/drawShape.ts';
import { at, fill, line, type Pen, path, stroke, write } from '../plan/draw/pen.ts';
import { wordsAlong } from '../plan/draw/wordsAlong.ts';
import { neatlineBounds } from '../plan/neatline.ts';
import type { MatPlace } from '../plan/reportParts.ts';
import type { Size } from '../plan/viewport.ts';
import { colours, dashes, lines } from '../styles/tokens.ts';
import type { Day, DayStep } from './dayOf.ts';

/** Where a step's number stands on the screen, px. */
export interface NumberPlace {
  readonly step: string;
  readonly at: Point;
}

const ROUND = 9;

/** How it stands now dashed, how it will stand in ink, and numbered arrows between. @returns where the numbers stand */
export function drawMove(pen: Pen, day: Day, mats: readonly MatPlace[], chosen: string | null, size: Size): NumberPlace[] {
  const { plan } = day;
  const { from, to } = plan;
  const { room } = from;
  const bounds = neatlineBounds(room.outline);
  drawRoom(pen, room);
  drawZones(pen, from.classroom.room.zones);
  drawGrid(pen, room, { x: bounds.minX, y: bounds.minY }, { x: bounds.maxX, y: bounds.maxY });
  for (const opening of room.openings) drawOpening(pen, opening);
  drawOpeningNames(pen, room);
  for (const mat of mats) drawMat(pen, mat);
  for (const { from: bodies } of plan.units) for (const body of bodies) drawNow(pen, body);
  for (const places of plan.sequence.places.values()) for (const body of places ?? []) drawForAWhile(pen, body);
  drawAfter(pen, day, to.bodies);
  const step = day.steps.find((one) => one.step.id === chosen);
  if (step) drawChosenStep(pen, day, step);
  const numbers: NumberPlace[] = [];
  const lengths: Point[] = [];
  for (const one of day.steps) {
    const place = drawArrow(pen, day, one, numbers, lengths);
    if (place) numbers.push({ step: one.step.id, at: place });
  }
  for (const { step: id, at: place } of numbers) {
    const one = day.steps.find((other) => other.step.id === id);
    if (one) drawNumber(pen, place, one);
  }
  drawNeatline(pen, bounds, size);
  return numbers;
}

function drawNow(pen: Pen, body: SceneBody): void {
  path(pen, ringOf(pen, body));
  stroke(pen, { colour: colours.pencil, width: 1.1, dash: dashes.movedFrom });
}

function drawForAWhile(pen: Pen, body: SceneBody): void {
  path(pen, ringOf(pen, body));
  stroke(pen, { colour: colours.blue, width: 1.1, dash: dashes.sight });
  write(pen, 'for a while', at(pen, body.center), { size: 10, colour: colours.pencilText, ground: colours.leaf });
}

function drawAfter(pen: Pen, { plan, names }: Day, bodies: readonly SceneBody[]): void {
  const areas = areasOfShelves(plan.to.arrangement, plan.to.classroom.materials);
  const isUnder = ({ kind }: SceneBody): boolean => kind === 'rug';
  for (const body of [...bodies].sort((p, q) => Number(isUnder(q)) - Number(isUnder(p)))) {
    if (body.piece) drawPiece(pen, body, { number: names.number(plan.earlierId(body.id)), area: areas.get(body.id) ?? null });
    else drawFixture(pen, body);
  }
}

/** The pieces of a step in the list, ringed where they stand after it. */
function drawChosenStep(pen: Pen, { plan }: Day, { step }: DayStep): void {
  const ids = new Set(step.pieces);
  const there = plan.to.bodies.filter((body) => body.piece && ids.has(plan.earlierId(body.id)));
  const rings =
    step.does === 'aside' && step.stands ? [step.stands] : there.length > 0 ? there : plan.from.bodies.filter(({ id }) => ids.has(id));
  for (const body of rings) {
    path(pen, ringOf(pen, body));
    stroke(pen, { colour: colours.blue, width: lines.selection });
  }
}

/** From where the piece stands before the step to where it stands after, with the length in metres. */
function drawArrow(pen: Pen, { plan }: Day, one: DayStep, taken: readonly NumberPlace[], lengths: Point[]): Point | null {
  const { step } = one;
  if (step.unit === null) return null;
  const moved = plan.units[step.unit];
  const start = step.does === 'back' ? (plan.sequence.places.get(step.unit)?.[0] ?? moved?.from[0]) : moved?.from[0];
  const end = step.stands;
  const only = start ?? end;
  if (!only) return null;
  const a = at(pen, only.center);
  if (!start || !end) return freePlace(pen, a, { x: 0, y: -1 }, taken, plan.to.bodies);
  const centre = at(pen, end.center);
  const along = unit(sub(centre, a));
  // Its head stands before the name of the piece.
  const b = distance(a, centre) > 34 ? sub(centre, scale(along, 13)) : centre;
  const far = distance(a, b);
  const colour = one.state.state === 'done' ? colours.pencil : colours.blue;
  if (far > 2 * ROUND) {
    const points =
      step.path?.how === 'slide' && step.path.legs.length === 2 ? [a, at(pen, add(start.center, step.path.legs[0] as Point)), b] : [a, b];
    path(pen, points, false);
    stroke(pen, { colour, width: 1.6 });
    drawArrowHead(pen, points.at(-2) as Point, b, colour, 8);
    const mm = distance(start.center, end.center);
    if (far > 34) {
      const where = wordsAlong(a, b, 16, lengths);
      lengths.push(where);
      const text = sayLength(Math.round(mm / 10) * 10, pen.units).replace(/ m$/, '');
      write(pen, text, where, { size: 11, weight: 650, colour: colours.blue, ground: colours.leaf });
    }
  }
  return freePlace(pen, a, far > 1 ? along : { x: 0, y: -1 }, taken, plan.to.bodies);
}

/** Near a point, clear of numbers and of the middle of things, where their names stand. */
function freePlace(pen: Pen, from: Point, along: Point, taken: readonly NumberPlace[], bodies: readonly SceneBody[]): Point {
  const across = { x: -along.y, y: along.x };
  const tries = [
    from,
    ...[20, 40, 60].flatMap((by) => [add(from, scale(across, by)), add(from, scale(across, -by)), add(from, scale(along, -by))]),
  ];
  const names = bodies.map(({ footprint }) => {
    const { minX, minY, maxX, maxY } = boundingBox(footprint);
    return at(pen, { x: (minX + maxX) / 2, y: (minY + maxY) / 2 });
  });
  const isFree = (p: Point): boolean =>
    taken.every((other) => distance(other.at, p) > 2 * ROUND + 1) && names.every((name) => distance(name, p) > ROUND + 10);
  return tries.find(isFree) ?? from;
}

/** A disc while it is open, hollow when it is done, a diamond when it cannot be done. */
function drawNumber(pen: Pen, p: Point, { number, state }: DayStep): void {
  const { ctx } = pen;
  const isDone = state.state === 'done';
  const isCannot = state.state === 'cannot';
  if (isCannot) {
    const r = ROUND + 4;
    path(pen, [
      { x: p.x, y: p.y - r },
      { x: p.x + r, y: p.y },
      { x: p.x, y: p.y + r },
      { x: p.x - r, y: p.y },
    ]);
  } else {
    ctx.beginPath();
    ctx.arc(p.x, p.y, ROUND, 0, 2 * Math.PI);
  }
  fill(pen, isDone ? colours.leaf : isCannot ? colours.must : colours.blue);
  stroke(pen, { colour: isDone ? colours.pencil : colours.leaf, width: 1.2 });
  write(pen, String(number), p, { size: 10.5, weight: 700, colour: isDone ? colours.pencilText : colours.leaf });
  if (!isDone) return;
  line(pen, { x: p.x + 4, y: p.y + 6 }, { x: p.x + 7, y: p.y + 9 }, { colour: colours.note, width: 1.8 });
  line(pen, { x: p.x + 7, y: p.y + 9 }, { x: p.x + 12, y: p.y + 2 }, { colour: colours.note, width: 1.8 });
}
