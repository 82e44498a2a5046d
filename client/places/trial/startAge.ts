import type { Classroom } from '#model/schema/types.ts';

/** months: a room for three to six year olds, where nobody has said who is in it */
const USUAL = 36;

/** The age that a trial begins with, months: of the youngest whom the class is for. */
export function startAge({ children }: Classroom): number {
  const ages = children.groups.map(({ fromMonths }) => fromMonths);
  return ages.length === 0 ? USUAL : Math.min(...ages);
}
