import { areaLetters } from '#model/catalogue/areas.ts';
import { distance, type Point } from '#model/geometry/vec.ts';
import type { SceneBody } from '#model/scene/types.ts';
import { areasOfShelves } from '../plan/areas.ts';
import { drawFixture } from '../plan/draw/drawFixture.ts';
import { drawArrowHead, drawMat } from '../plan/draw/drawMarks.ts';
import { drawNeatline } from '../plan/draw/drawNeatline.ts';
import { drawOpening, drawOpeningNames } from '../plan/draw/drawOpenings.ts';
import { drawPiece } from '../plan/draw/drawPiece.ts';
import { drawGrid, drawRoom, drawZones } from '../plan/draw/drawRoom.ts';
import { ringOf } from '../plan/draw/drawShape.ts';
import { labelPlace } from '../plan/draw/labelPlace.ts';
import { at, fill, line, type Pen, path, stroke, widthOf, write } from '../plan/draw/pen.ts';
import { neatlineBounds } from '../plan/neatline.ts';
import type { MatPlace } from '../plan/reportParts.ts';
import type { Size } from '../plan/viewport.ts';
import { colours, dashes, lines } from '../styles/tokens.ts';
import { figure } from '../text/figure.ts';
import { type Arrow, type Box, lengthPlace, roundPlace } from './clearPlaces.ts';
import type { Day, DayStep } from './dayOf.ts';
import { moveArrow } from './moveArrow.ts';

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
  const names = namesOf(pen, day);
  const arrows = day.steps.flatMap((one) => arrowOf(pen, day, one) ?? []);
  for (const { points, isDone } of arrows) drawArrow(pen, points, isDone ? colours.pencil : colours.blue);
  const numbers: NumberPlace[] = [];
  for (const { step, points } of arrows)
    numbers.push({ step, at: roundPlace(points, ROUND, { names, rounds: numbers.map(({ at: p }) => p), arrows }) });
  const lengths: Box[] = [];
  for (const arrow of arrows) {
    if (arrow.text === '') continue;
    const size = { width: widthOf(pen, arrow.text, 11, 650) + 6, height: 13 };
    const box = lengthPlace(arrow, size, { names: [...names, ...lengths], rounds: numbers.map(({ at: p }) => p), arrows });
    lengths.push(box);
    write(pen, arrow.text, box.center, { size: 11, weight: 650, colour: colours.blue, ground: colours.leaf });
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

/** Where the names of what stands afterwards are written. */
function namesOf(pen: Pen, { plan, names }: Day): Box[] {
  const areas = areasOfShelves(plan.to.arrangement, plan.to.classroom.materials);
  return plan.to.bodies.flatMap((body): Box[] => {
    const area = areas.get(body.id);
    const number = body.piece && names.number(plan.earlierId(body.id));
    const text = [number ?? body.piece?.name ?? '', area && areaLetters(area.area, area.strand)].filter(Boolean).join(' ');
    const place = text === '' ? null : labelPlace(pen, body, text, body.kind === 'shelf' ? 650 : 400);
    if (!place) return [];
    const long = widthOf(pen, place.said, place.size, 650) + 4;
    const isUpright = Math.abs(place.along.y) > 0.7;
    const high = place.size + 4;
    return [{ center: place.center, width: isUpright ? high : long, height: isUpright ? long : high }];
  });
}

/** A step's arrow with the length in metres; null: nothing is moved. */
function arrowOf(pen: Pen, day: Day, one: DayStep): (Arrow & { step: string; isDone: boolean; text: string }) | null {
  const arrow = moveArrow(day, one, { at: (p) => at(pen, p), before: 13, least: 2 * ROUND });
  if (!arrow) return null;
  const { points, long } = arrow;
  const isWorded = long !== null && distance(points[0] as Point, points.at(-1) as Point) > 34;
  const text = isWorded ? figure(Math.round(long / 10) * 10, pen.units) : '';
  return { step: one.step.id, isDone: one.state.state === 'done', points, text };
}

function drawArrow(pen: Pen, points: readonly Point[], colour: string): void {
  if (points.length < 2) return;
  path(pen, [...points], false);
  stroke(pen, { colour, width: 1.6 });
  drawArrowHead(pen, points.at(-2) as Point, points.at(-1) as Point, colour, 8);
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
