import type { Report } from '#model/analysis/report.ts';
import { contains } from '#model/geometry/polygon.ts';
import { bodyOfFixture, bodyOfPiece } from '../bodies.ts';
import { cornersOf } from '../box.ts';
import { chairsOf } from '../chairs.ts';
import { type PlanModel, rawRoomOf, roomOf } from '../planModel.ts';
import { matsIn } from '../reportParts.ts';
import { at, type Pen } from './pen.ts';
import { boxAround, cornersOfBox, type WordBox } from './wordPlace.ts';

/** px taken by what stands on the floor, by chairs drawn at tables and by leaves that swing into the room. */
export function takenOnFloor(pen: Pen, model: PlanModel, without: string | null = null): WordBox[] {
  const pieces = model.session.arrangement().pieces.filter((piece) => piece.kind !== 'rug');
  const rings = [
    ...pieces.filter(({ id }) => id !== without).map((piece) => bodyOfPiece(piece).footprint),
    ...pieces.filter(({ kind }) => kind === 'table').flatMap((table) => chairsOf(table).map(cornersOf)),
    ...rawRoomOf(model).fixtures.map((fixture) => bodyOfFixture(fixture).footprint),
    ...roomOf(model).openings.flatMap(({ swingFloor }) => (swingFloor ? [swingFloor] : [])),
  ];
  return rings.map((ring) => boxAround(ring.map((p) => at(pen, p))));
}

/** px: half a mark of a finding */
const MARK = 7;

/** px taken by mats that fit, where they are to be kept clear, and by the marks of findings. */
export function takenByMarks(pen: Pen, report: Report | null, withMats = true): WordBox[] {
  const marks = (report?.findings ?? []).flatMap(({ at: place, severity, leftReason }) =>
    place && severity !== 'note' && leftReason === null ? [at(pen, place)] : [],
  );
  return [
    ...(withMats ? matsIn(report) : []).map((mat) => boxAround(cornersOf(mat).map((p) => at(pen, p)))),
    ...marks.map(({ x, y }) => ({ x0: x - MARK, y0: y - MARK, x1: x + MARK, y1: y + MARK })),
  ];
}

/** Whether words lie on the floor whole, over no wall. */
export function onFloor(pen: Pen, model: PlanModel): (box: WordBox) => boolean {
  const ring = roomOf(model).outline.map((p) => at(pen, p));
  return (box) =>
    cornersOfBox(box).every((p) => contains(ring, p)) && !ring.some((p) => p.x > box.x0 && p.x < box.x1 && p.y > box.y0 && p.y < box.y1);
}
