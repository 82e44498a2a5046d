import { convexSum, mirrored } from '../geometry/convexSum.ts';
import { distanceToPart } from '../geometry/parts.ts';
import { boundingBox, type Polygon } from '../geometry/polygon.ts';
import { isInPatch, type Patch, patchesOf, pointInside, without } from '../geometry/region.ts';
import { type Point, turn } from '../geometry/vec.ts';
import { type WidestDisc, widestDisc } from '../geometry/widestDisc.ts';
import type { Scene } from '../scene/types.ts';
import { accessibleRoutes } from '../standards/accessibleRoutes.ts';
import { accessFigures } from './accessFigures.ts';
import { matTurns } from './floor.ts';
import { enteredFloor } from './walkFloor.ts';
import { WaysField } from './waysField.ts';

/** mm: a T is taken this much smaller all round, so that one that just fits is not lost in rounding. */
const EASE = 0.02;
/** mm: how exactly a disc's diameter is found */
const WITHIN = 0.1;
/** mm: a shorter wall gives no direction to try */
const LEAST_WALL = 500;
/** Inches over the mm that the standard prints: 60 in are 1524 of 1525. */
const PRINTED = 1524 / 1525;

/** Floor to turn a wheelchair on, reached over the route's width; children sit at the tables, leaves count as shut. */
export interface Turning {
  /** The widest disc, to 0.1 mm; once wide enough it is no longer widened. */
  readonly disc: WidestDisc | null;
  readonly isEnough: boolean;
  /** Where a T-turn of the standard's size lies, square to some wall; null: none does, or none was asked for. */
  readonly tee: { readonly at: Point; readonly turn: number } | null;
}

/** Null where the walls do not hold. @param withTee look for a T where no disc of `enough` mm lies */
export function measureTurning(scene: Scene, enough: number, withTee: boolean): Turning | null {
  if (!scene.room.isSound) return null;
  const field = WaysField.of(scene);
  const entered = enteredFloor(scene, accessFigures(scene).routeMeets, 'in use');
  const nearest = (p: Point): number => field.parts.reduce((least, part) => Math.min(least, distanceToPart(part, p.x, p.y)), Infinity);
  const clearance = (p: Point): number => (field.isFloor(p) ? nearest(p) : -nearest(p));
  const isEntered = (p: Point): boolean => entered.some((patch) => isInPatch(patch, p));
  const box = boundingBox(scene.room.outline);
  const disc = entered.length === 0 ? null : widestDisc(box, clearance, isEntered, enough - WITHIN, WITHIN);
  const isEnough = disc !== null && disc.diameter >= enough - WITHIN;
  return { disc, isEnough, tee: withTee && !isEnough ? findTee(scene, field, entered) : null };
}

/** Both arms of a T about the middle of the crossbar, which lies across; the base points down. */
function teeParts(): [Polygon, Polygon] {
  const { square, arm, alongBase } = accessibleRoutes.turningT;
  const [half, halfArm, base] = [square, arm, 2 * alongBase].map((size) => (size * PRINTED) / 2 - EASE) as [number, number, number];
  const bar = [
    { x: -half, y: -halfArm },
    { x: half, y: -halfArm },
    { x: half, y: halfArm },
    { x: -half, y: halfArm },
  ];
  const stem = [
    { x: -halfArm, y: 0 },
    { x: halfArm, y: 0 },
    { x: halfArm, y: halfArm + base },
    { x: -halfArm, y: halfArm + base },
  ];
  return [bar, stem];
}

function findTee(scene: Scene, field: WaysField, entered: readonly Patch[]): Turning['tee'] {
  const floor = without(
    [scene.room.outline],
    scene.bodies.filter((body) => body.isObstacle && !body.isConvex).map((body) => body.footprint),
  );
  for (const base of matTurns(scene, LEAST_WALL)) {
    for (const angle of [base, base + 90, base + 180, base + 270]) {
      const tee = teeParts().map((part) => mirrored(part.map((p) => turn(p, angle))));
      const shut = field.parts.flatMap((part) => tee.map((one) => convexSum(part.ring, one)));
      for (const patch of patchesOf(without(floor, shut))) {
        const at = pointInside(patch);
        if (entered.some((one) => isInPatch(one, at))) return { at, turn: angle };
      }
    }
  }
  return null;
}
