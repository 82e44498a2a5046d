import type { Arrangement, Classroom } from '#model/schema/types.ts';
import { contentKey } from '../store/contentKey.ts';

/**
 * What a count of mats hangs on: while these are the same objects it holds. The walls, what stands, how wide ways are and
 * how large a mat is (tests/unit/client/mats/matGrounds.test.ts holds it against what the proof reads); not the picture
 * under the drawing, what was taped, or zones.
 */
export const matGrounds = (
  { room, access, floorWork }: Pick<Classroom, 'room' | 'access' | 'floorWork'>,
  pieces: Arrangement['pieces'] | undefined,
): readonly unknown[] => [room.corners, room.openings, room.fixtures, access, floorWork.mat, floorWork.gap, pieces];

/** Rises when a proof would come out otherwise for the same room, so that none is taken over from before. */
const RECKONING = 3;

/** The same for grounds that read the same, also after the page was loaded again. */
export const groundsKey = (grounds: readonly unknown[]): string => contentKey([RECKONING, grounds]);
