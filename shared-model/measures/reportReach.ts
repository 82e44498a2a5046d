import { roundMm } from '../units/round.ts';
import { massOf } from './childMass.ts';
import { CARRY_NOTE } from './order/carryNote.ts';
import type { Reach } from './reach.ts';
import { takeLimit } from './reachCurves.ts';

/** mm behind the front: the middle of a board 300 deep, for figures that need one depth. */
const USUAL_DEPTH = 150;

/** The report's line: mm and kg; `highest` is the highest surface at `atDepth`, for a thing gripped 50 above it. */
export function reportReach({ smallest }: Reach) {
  if (!smallest) return null;
  const atUsual = takeLimit(smallest, USUAL_DEPTH);
  const atDepth = atUsual === null ? 0 : USUAL_DEPTH;
  const mass = massOf(smallest);
  return {
    months: smallest.months,
    percentile: smallest.percentile,
    stature: roundMm(smallest.stature),
    shoulder: roundMm(smallest.shoulder),
    eye: roundMm(smallest.eye),
    arm: roundMm(smallest.arm),
    standOff: roundMm(smallest.standOff),
    highest: roundMm(atUsual ?? takeLimit(smallest, 0) ?? smallest.shoulder),
    atDepth,
    carry: roundMm(mass * CARRY_NOTE),
    mass: roundMm(mass),
    measured: smallest.isMeasured,
  };
}
