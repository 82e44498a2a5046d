import type { Scene } from '../scene/types.ts';

/** Mats that lie on the floor at once: at least `count`, at most `upperBound`. */
export interface MatCount {
  readonly count: number;
  readonly upperBound: number;
}

/** Places to work: a seat or a mat each. */
export interface WorkPlaces {
  readonly seats: number;
  readonly mats: MatCount;
  /** seats plus the mats found */
  readonly least: number;
  /** seats plus the most mats possible */
  readonly most: number;
}

export const measureWork = (seats: number, mats: MatCount): WorkPlaces => ({
  seats,
  mats,
  least: seats + mats.count,
  most: seats + mats.upperBound,
});

/** What the bare floor says of mats: none found yet, and no more than its area holds. */
export function matsByArea({ room, classroom }: Scene): MatCount {
  const { width, depth } = classroom.floorWork.mat;
  return { count: 0, upperBound: room.isSound ? Math.floor((room.area * 1e6) / (width * depth)) : Infinity };
}
