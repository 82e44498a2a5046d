import { edges } from '#model/geometry/polygon.ts';
import { distance, lerp, type Point } from '#model/geometry/vec.ts';
import { bodyOfFixture, bodyOfPiece } from './bodies.ts';
import { type PlanModel, rawRoomOf, roomOf } from './planModel.ts';
import { closest, nearestOn } from './snap.ts';

/** Where the tape's end takes hold near p: a corner first, then a middle of a side, then a side, else just there. */
export function tapePoint(model: PlanModel, p: Point, reach: number): Point {
  const rings = [
    roomOf(model).outline,
    ...model.session.arrangement().pieces.map((piece) => bodyOfPiece(piece).footprint),
    ...rawRoomOf(model).fixtures.map((fixture) => bodyOfFixture(fixture).footprint),
  ];
  const sides = rings.flatMap(edges);
  const within = (q: Point): boolean => distance(p, q) <= reach;
  const nearest = (points: readonly Point[]): Point | undefined => closest(points.filter(within), (q) => distance(p, q));
  return (
    nearest(rings.flat()) ??
    nearest(sides.map(({ a, b }) => lerp(a, b, 0.5))) ??
    nearest(sides.map((side) => nearestOn(side, p))) ?? { x: Math.round(p.x), y: Math.round(p.y) }
  );
}
