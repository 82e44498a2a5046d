import { readClassroom } from '#model/schema/readFile.ts';
import type { Classroom } from '#model/schema/types.ts';
import type { LengthUnits } from '#model/units/sayLength.ts';
import { standIn } from '../states/notDrawn.ts';

export interface NewRoom {
  readonly name: string;
  readonly units: LengthUnits;
  /** mm along the page */
  readonly length: number;
  /** mm down the page */
  readonly width: number;
  readonly groups: readonly { readonly name: string; readonly fromMonths: number; readonly toMonths: number; readonly count: number }[];
  readonly ruleSet: string;
  /** Whose rules count for the ways out; absent: not chosen yet. */
  readonly exitRules?: Classroom['exitRules'];
  /** The walls are drawn later: the rectangle only stands in. */
  readonly isDrawnLater?: boolean;
}

/**
 * A rectangular room without anything in it. Walls are drawn or moved afterwards.
 * @throws Error when a value lies outside the limits of the format; the form does not let one through.
 */
export function newClassroom(room: NewRoom): Classroom {
  const { length, width } = room;
  const corner = (number: number): string => (room.isDrawnLater ? standIn(number) : `c${number}`);
  const read = readClassroom({
    format: 'lowshelf.classroom',
    version: 1,
    name: room.name,
    display: { units: room.units },
    children: { groups: room.groups.map((group, index) => ({ id: `g${index + 1}`, ...group })) },
    ruleSet: room.ruleSet,
    exitRules: room.exitRules ?? null,
    room: {
      corners: [
        { id: corner(1), x: 0, y: 0 },
        { id: corner(2), x: length, y: 0 },
        { id: corner(3), x: length, y: width },
        { id: corner(4), x: 0, y: width },
      ],
    },
    arrangements: [{ id: 'a1', name: 'As it stands' }],
    current: 'a1',
  });
  if (!read.ok) throw new Error(read.problems.map((p) => `${p.path}: found ${p.found}, expected ${p.expected}`).join('; '));
  return read.classroom;
}
