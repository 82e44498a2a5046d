import type { Arrangement, Classroom } from '#model/schema/types.ts';

/** What a count of mats hangs on: while these are the same objects it holds. */
export const matGrounds = (
  { room, access, floorWork }: Pick<Classroom, 'room' | 'access' | 'floorWork'>,
  pieces: Arrangement['pieces'] | undefined,
): readonly unknown[] => [room, access, floorWork, pieces];
