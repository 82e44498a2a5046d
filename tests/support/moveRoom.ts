import type { Classroom, ClassroomInput } from '#model/schema/types.ts';
import { type PlainRoomChange, plainRoom } from './plainRoom.ts';

type Arrangement = ClassroomInput['arrangements'][number];
export type MovePiece = NonNullable<Arrangement['pieces']>[number];

/** The plain room with two arrangements, "As it stands" (a1) and "Open middle" (a2). */
export function moveRoom(
  before: readonly MovePiece[],
  after: readonly MovePiece[],
  more: PlainRoomChange & { placed?: readonly [NonNullable<Arrangement['placements']>, NonNullable<Arrangement['placements']>] } = {},
): Classroom {
  const { placed, ...change } = more;
  return plainRoom({
    ...change,
    current: 'a1',
    arrangements: [
      { id: 'a1', name: 'As it stands', pieces: [...before], placements: placed?.[0] ?? [] },
      { id: 'a2', name: 'Open middle', pieces: [...after], placements: placed?.[1] ?? [] },
    ],
  });
}
