/** Mats that lie on the floor at once: at least `count`, at most `upperBound`. */
export interface MatCount {
  readonly count: number;
  readonly upperBound: number;
}

/** Places to work: a seat or a mat each. */
export interface WorkPlaces {
  readonly seats: number;
  /** null: the walls do not hold, so there is no floor to lay mats on. */
  readonly mats: MatCount | null;
  /** seats plus the mats found */
  readonly least: number;
  /** seats plus the most mats possible; infinite where mats cannot be told */
  readonly most: number;
}

export const measureWork = (seats: number, mats: MatCount | null): WorkPlaces => ({
  seats,
  mats,
  least: seats + (mats?.count ?? 0),
  most: seats + (mats?.upperBound ?? Infinity),
});
