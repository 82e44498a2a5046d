import { cdcStature } from '../standards/cdcStature.ts';
import type { GrowthSex } from '../standards/lmsTable.ts';
import { type RatioFit, segmentRatios } from '../standards/segmentRatios.ts';
import { lmsAt, lmsValue, zOfPercentile } from './growth.ts';

/** Months covered by the growth tables. Below them nothing is known; above them the last row holds, on the small side. */
export const GROWTH_MONTHS = { from: 24, to: 156 } as const;

/** Share of the foot that lies before the ankle, above which she stands: toes touching the shelf (our assumption). */
const TOES_BEFORE_ANKLE = 0.75;

export interface ChildInput {
  readonly months: number;
  /** 0 to 100 */
  readonly percentile: number;
  /** Which table; a class is never asked, it gets the smaller one. */
  readonly sex?: GrowthSex;
  /** mm; a measured stature replaces the table. */
  readonly measuredStature?: number | null;
  /**
   * combined: reach at the percentile, from the spread of stature and of reach together (default);
   * stature: stature at the percentile times the mean ratio. A measured stature always goes by stature.
   */
  readonly mode?: 'combined' | 'stature';
}

/** A standing child, in mm above the floor unless it says otherwise. Her body mass: childMass.ts. */
export interface ChildModel {
  readonly months: number;
  readonly percentile: number;
  readonly sex: GrowthSex;
  readonly isMeasured: boolean;
  readonly stature: number;
  readonly shoulder: number;
  /** Length of the arm to the grip, held level. */
  readonly arm: number;
  /** How far above the shoulder the grip gets, arm straight up: a little more than the arm, as the shoulder rises. */
  readonly lift: number;
  readonly eye: number;
  readonly axilla: number;
  /** From the front of the shelf to the shoulder, toes touching it. */
  readonly standOff: number;
}

/**
 * The lengths of a child of an age and a percentile. Stature: CDC 2000. Ratios: records of
 * UM-HSRI-77-17, 1977. The class's children are taken by the girls' table, the smaller one at these ages.
 * @returns null below 24 months, where neither source says anything.
 */
export function childModel({ months, percentile, sex = 'girl', measuredStature = null, mode = 'combined' }: ChildInput): ChildModel | null {
  if (months < GROWTH_MONTHS.from) return null;
  const age = Math.min(months, GROWTH_MONTHS.to);
  const years = age / 12;
  const z = zOfPercentile(percentile);
  const table = lmsAt(cdcStature, sex, age);
  const stature = measuredStature ?? lmsValue(table, z) * 10;
  const grip = ratioAt(segmentRatios.verticalGripReach, years);
  const spread = Math.hypot(table.s, segmentRatios.verticalGripReach.residual / grip);
  const reaching = mode === 'stature' || measuredStature !== null ? stature : table.m * 10 * (1 + z * spread);
  const of = (fit: RatioFit, whole: number): number => ratioAt(fit, years) * whole;
  const shoulder = of(segmentRatios.shoulder, reaching);
  return {
    months,
    percentile,
    sex,
    isMeasured: measuredStature !== null,
    stature,
    shoulder,
    arm: of(segmentRatios.armToGrip, reaching),
    lift: grip * reaching - shoulder,
    eye: of(segmentRatios.eye, stature),
    axilla: of(segmentRatios.axilla, stature),
    standOff: TOES_BEFORE_ANKLE * of(segmentRatios.foot, reaching),
  };
}

const ratioAt = ({ c0, c1, c2 }: RatioFit, years: number): number => c0 + c1 * years + c2 * years * years;
