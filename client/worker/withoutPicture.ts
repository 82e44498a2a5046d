import type { Classroom, Room } from '#model/schema/types.ts';

const bareRooms = new WeakMap<Room, Room>();
const bare = new WeakMap<Classroom, Classroom>();

/** The classroom for those who judge it: no check reads the picture under the drawing, and it is too large to be copied at each step of a drag. */
export function withoutPicture(classroom: Classroom): Classroom {
  const { room } = classroom;
  if (room.picture === null) return classroom;
  const known = bare.get(classroom);
  if (known) return known;
  const bareRoom = bareRooms.get(room) ?? { ...room, picture: null };
  bareRooms.set(room, bareRoom);
  const made = { ...classroom, room: bareRoom };
  bare.set(classroom, made);
  return made;
}
