/** A body measure as a share of stature: c0 + c1·age + c2·age², age in years, 2 to 13. */
export interface RatioFit {
  readonly c0: number;
  readonly c1: number;
  readonly c2: number;
  /** Standard deviation of the ratio about the fit. */
  readonly residual: number;
}

/**
 * Shares of stature of standing children, both sexes. Our smooth fits to the individual records of
 * UM-HSRI-77-17 (1977), computed from a stored copy of those records (found).
 */
export const segmentRatios = {
  /** Floor to the handle held in the fist, arm fully raised. */
  verticalGripReach: { c0: 1.07822, c1: 0.020155, c2: -0.0006997, residual: 0.0273 },
  /** Height of the suprasternale, which stands in for the shoulder (not measured standing). */
  shoulder: { c0: 0.73749, c1: 0.009844, c2: -0.0003236, residual: 0.0094 },
  /** Stature less sitting height plus sitting eye height. */
  eye: { c0: 0.87337, c1: 0.005712, c2: -0.0001307, residual: 0.0114 },
  axilla: { c0: 0.67652, c1: 0.010741, c2: -0.0003143, residual: 0.0144 },
  foot: { c0: 0.15939, c1: -0.000505, c2: 0.0000189, residual: 0.0058 },
  /** Shoulder joint to the grip: upper arm, forearm and 0.4 of the hand. */
  armToGrip: { c0: 0.36289, c1: 0.000519, c2: 0.0000652, residual: 0.0144 },
} as const satisfies Readonly<Record<string, RatioFit>>;
