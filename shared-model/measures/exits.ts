import { meshOf, triangleAt } from '../geometry/floorMesh.ts';
import type { Point } from '../geometry/vec.ts';
import { type Farthest, WalkField } from '../geometry/walkField.ts';
import type { Scene, SceneOpening } from '../scene/types.ts';
import { roundMm } from '../units/round.ts';
import { placesInDoor, walkFloor } from './walkFloor.ts';

/** mm: how exactly the farthest place is found */
const WITHIN = 0.001;

/** How far it is to walk out of the room. */
export interface ExitWalks {
  /** Doors and passages marked as exits, in file order. */
  readonly exits: readonly SceneOpening[];
  /** By exit: the place from which it is farthest; null: the exit is shut off. */
  readonly toEach: readonly (Farthest | null)[];
  /** The place from which the nearest exit is farthest; null: there is none, or every exit is shut off. */
  readonly toNearest: Farthest | null;
}

export const exitsOf = (scene: Scene): SceneOpening[] => scene.room.openings.filter((opening) => opening.raw.exit && opening.isWayIn);

/**
 * Walks round furniture to the middle of an exit's clear opening, seats pushed in, every gap under 300 mm shut; floor
 * that no walk leads to is left out. The farthest place is found to 0.001 mm of its walk, and
 * told as between two figures where that takes too long.
 */
export function measureExitWalks(scene: Scene): ExitWalks {
  const exits = exitsOf(scene);
  const nowhere = { exits, toEach: exits.map(() => null), toNearest: null };
  if (exits.length === 0 || !scene.room.isSound) return nowhere;
  const mesh = meshOf(walkFloor(scene));
  if (!mesh) return nowhere;
  const ends = exits.map((exit) => placesInDoor(exit).find((p) => triangleAt(mesh, p) >= 0) ?? null);
  const farthestFrom = (sources: readonly Point[]): Farthest | null =>
    sources.length === 0 ? null : new WalkField(mesh, sources).farthest(WITHIN);
  const toEach = ends.map((end) => farthestFrom(end ? [end] : []));
  const open = ends.flatMap((end) => end ?? []);
  const [only] = toEach;
  return { exits, toEach, toNearest: exits.length === 1 ? (only ?? null) : farthestFrom(open) };
}

/** As the report lists it: no walk is longer than `atMost`, and one of `farthest` there is. */
export const reportExits = ({ exits, toEach }: ExitWalks) =>
  exits.map(({ id }, i) => {
    const far = toEach[i];
    if (!far) return { door: id, farthest: null, atMost: null, from: null };
    return { door: id, farthest: roundMm(far.least), atMost: roundMm(far.most), from: { x: roundMm(far.at.x), y: roundMm(far.at.y) } };
  });
