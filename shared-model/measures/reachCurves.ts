import type { ChildModel } from './childModel.ts';

/** A hand grips an object about this far above its base, or at half its height if that is lower (mm, our assumption). */
export const GRIP_ABOVE_BASE = 50;
/** A thing wider than deep is taken by its near edge: no deeper than this behind it (mm, class rule). */
export const WIDE_TAKE_DEPTH = 120;
/** Flatter sight lines than this hide flat things (degrees, our assumption). */
const LEAST_SIGHT_ANGLE = 15;
/** She steps back no further than this to look (mm, class rule). */
export const FARTHEST_LOOK = 2500;

/** How far before the shelf her shoulder is (mm): nearer where the toes go under. */
export const standOffAt = (child: ChildModel, toeRecess = 0): number => Math.max(0, child.standOff - toeRecess);

/**
 * The highest grip, mm above the floor, `depth` mm behind the shelf's front: the ellipse of the raised arm about
 * the shoulder. Null: her arm ends before that, at any height, or, with a thing that hangs far over the front, behind her. Holds at or above the shoulder; below it she stoops
 * and only the depth counts.
 */
export function highestGrip(child: ChildModel, depth: number, toeRecess = 0): number | null {
  const x = standOffAt(child, toeRecess) + depth;
  if (Math.abs(x) >= child.arm) return null;
  return child.shoulder + child.lift * Math.sqrt(1 - (x / child.arm) ** 2);
}

/**
 * The highest surface (mm above the floor) from which she takes a thing gripped `grip` mm above it and
 * `depth` mm behind the shelf's front; null: out of reach at any height.
 */
export function takeLimit(child: ChildModel, depth: number, grip = GRIP_ABOVE_BASE, toeRecess = 0): number | null {
  const highest = highestGrip(child, depth, toeRecess);
  return highest === null ? null : highest - grip;
}

/**
 * True when she gets a grip `height` mm above the floor, `depth` mm behind the front, with `spare` mm of reach left.
 * Below the shoulder she stoops: only the depth counts.
 */
export function canTake(child: ChildModel, depth: number, height: number, toeRecess = 0, spare = 0): boolean {
  const highest = highestGrip(child, depth, toeRecess);
  if (highest === null || standOffAt(child, toeRecess) + depth + spare >= child.arm) return false;
  return height < child.shoulder || height <= highest - spare + 1e-6;
}

/**
 * The highest open surface (mm above the floor) she sees into `depth` mm behind the front, her eye `distance` mm
 * before it (at least her stand-off): the sight line falls by `angle` degrees (15) or more.
 */
export function seeLine(child: ChildModel, depth: number, distance = standOffAt(child), angle = LEAST_SIGHT_ANGLE): number {
  return child.eye - slope(angle) * (distance + depth);
}

/** What a look at one spot on a board needs to know; mm above the floor, or behind the shelf's front. */
export interface Look {
  readonly surface: number;
  /** Underside of what is above; null: open. */
  readonly underside: number | null;
  readonly depth: number;
  readonly toeRecess: number;
  /** Free floor before the front. */
  readonly floor: number;
}
/** How she may look: the flattest sight line (degrees) and how far she steps back (mm). */
export interface LookRules {
  readonly angle: number;
  readonly stepBack: number;
}
export const usualLook: LookRules = { angle: LEAST_SIGHT_ANGLE, stepBack: FARTHEST_LOOK };

const slope = (angle: number): number => Math.tan((angle * Math.PI) / 180);

/**
 * How far before the front her eye sees the spot: from the nearest to the farthest place on the free floor where
 * the line clears the board above and falls by 15 degrees. Null: from nowhere.
 */
export function seenFrom(child: ChildModel, look: Look, rules = usualLook): { nearest: number; farthest: number } | null {
  const fall = child.eye - look.surface;
  if (fall <= 0) return null;
  const opening = look.underside === null ? Infinity : look.underside - look.surface;
  // z + (E-z)d/(D+d) <= u, solved for D; a board above the eye hides nothing.
  const clears = opening > 0 ? (fall * look.depth) / opening - look.depth : Infinity;
  const nearest = Math.max(standOffAt(child, look.toeRecess), clears);
  const steep = fall / slope(rules.angle) - look.depth;
  const farthest = Math.min(look.floor, rules.stepBack, steep);
  return nearest <= farthest + 1e-6 ? { nearest, farthest: Math.max(nearest, farthest) } : null;
}
