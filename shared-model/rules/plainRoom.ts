import { readClassroom } from '../schema/readFile.ts';
import type { Classroom, ClassroomInput } from '../schema/types.ts';

/** A part of a classroom file: what is left out is the plain room. `pieces` and `placements` go into its one arrangement. */
export type PlainRoomChange = Omit<Partial<ClassroomInput>, 'room'> & {
  room?: Partial<ClassroomInput['room']>;
  pieces?: ClassroomInput['arrangements'][number]['pieces'];
  placements?: ClassroomInput['arrangements'][number]['placements'];
  watch?: ClassroomInput['arrangements'][number]['watch'];
  walk?: ClassroomInput['arrangements'][number]['walk'];
};

/** An empty room of 6 x 5 m, one door of 900 (850 clear) in the north wall, eight children of three. */
export function plainRoomFile(change: PlainRoomChange = {}): ClassroomInput {
  const { room, pieces, placements, watch, walk, ...rest } = change;
  return {
    format: 'lowshelf.classroom',
    version: 1,
    name: 'Plain room',
    children: { groups: [{ id: 'g1', name: 'three', fromMonths: 36, toMonths: 48, count: 8 }] },
    adults: 2,
    ruleSet: 'england',
    room: {
      corners: [
        { id: 'c1', x: 0, y: 0 },
        { id: 'c2', x: 6000, y: 0 },
        { id: 'c3', x: 6000, y: 5000 },
        { id: 'c4', x: 0, y: 5000 },
      ],
      openings: [{ id: 'd1', kind: 'door', from: 'c1', offset: 400, width: 900, clear: 850, swing: 'out-left', exit: true }],
      ...room,
    },
    arrangements: [
      {
        id: 'a1',
        name: 'As it stands',
        ...(pieces && { pieces }),
        ...(placements && { placements }),
        ...(watch && { watch }),
        ...(walk && { walk }),
      },
    ],
    ...rest,
  };
}

/** The plain room, read as the app reads a file. */
export function plainRoom(change: PlainRoomChange = {}): Classroom {
  const read = readClassroom(JSON.parse(JSON.stringify(plainRoomFile(change))));
  if (!read.ok) throw new Error(read.problems.map((p) => `${p.path}: found ${p.found}, expected ${p.expected}`).join('\n'));
  return read.classroom;
}
