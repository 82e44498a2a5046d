import type { ChildModel } from './childModel.ts';
import { canTake, highestGrip, type LookRules, seenFrom, standOffAt, usualLook } from './reachCurves.ts';
import { gripAbove, type TrayShape, type TraySpot, takeDepth } from './traySpot.ts';

type Verdict = 'fine' | 'beyond' | 'unknown';

/** Can she take it? Figures in mm, for the place of the hand that is nearest to fine. */
export interface TakeVerdict {
  readonly verdict: Verdict;
  /** Height of the grip above the floor; null: not known. */
  readonly height: number | null;
  /** Hand behind the shelf's front. */
  readonly depth: number;
  /** Highest grip at that depth; null: her arm ends before it. */
  readonly limit: number | null;
  /** Deepest hand behind the front, at any height. */
  readonly deepest: number;
}

/**
 * Judges one tray on one spot, `spare` mm of reach left over. What is not known is tried at both ends: alike, and the
 * verdict stands.
 */
export function judgeTake(child: ChildModel, spot: TraySpot, tray: TrayShape, spare = 0): TakeVerdict {
  const depth = takeDepth(spot, tray);
  const grip = gripAbove(tray.material);
  const { surface, toeRecess } = spot;
  const height = surface === null ? null : surface + grip.low;
  const highest = highestGrip(child, depth.low, toeRecess);
  const figures = {
    height,
    depth: depth.low,
    limit: highest === null ? null : highest - spare,
    deepest: child.arm - standOffAt(child, toeRecess) - spare,
  };
  // With no surface known a grip on the floor stands for the best case and one on the moon for the worst.
  const best = canTake(child, depth.low, height ?? 0, toeRecess, spare);
  const worst = canTake(child, depth.high, surface === null ? Infinity : surface + grip.high, toeRecess, spare);
  return { ...figures, verdict: best === worst ? (best ? 'fine' : 'beyond') : 'unknown' };
}

/** Can she see into it? Figures in mm. */
export interface SeeVerdict {
  readonly verdict: Verdict;
  readonly depth: number;
  /** Where her eye sees it from, before the front; null: from nowhere. */
  readonly from: { readonly nearest: number; readonly farthest: number } | null;
  /** Where the free floor before it ends, at most 2500. */
  readonly floor: number;
}

/** Judges whether one tray on one spot is seen into, from somewhere on the free floor before it. */
export function judgeSee(child: ChildModel, spot: TraySpot, tray: TrayShape, rules: LookRules = usualLook): SeeVerdict {
  const depth = takeDepth(spot, tray);
  const { surface, clear, toeRecess } = spot;
  const floor = spot.floor();
  const at = { depth: depth.low, floor: Math.min(floor.high, rules.stepBack) };
  if (surface === null) return { ...at, verdict: 'unknown', from: null };
  const underside = clear === null ? null : surface + clear;
  const look = (d: number, free: number) => seenFrom(child, { surface, underside, depth: d, toeRecess, floor: free }, rules);
  const best = look(depth.low, floor.high);
  const worst = Number.isFinite(depth.high) ? look(depth.high, floor.low) : null;
  if (best === null) return { ...at, verdict: 'beyond', from: null };
  return { ...at, verdict: worst === null ? 'unknown' : 'fine', from: best };
}
