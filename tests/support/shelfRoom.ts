import type { Classroom, ClassroomInput } from '#model/schema/types.ts';
import { type PlainRoomChange, plainRoom } from './plainRoom.ts';

type MaterialInput = NonNullable<ClassroomInput['materials']>[number];
type PieceInput = NonNullable<PlainRoomChange['pieces']>[number];

/** A shelf against the north wall with boards named `<id>-1` from the top; the board that serves as its top is 1200 long. */
export function shelf(id: string, change: Partial<PieceInput> & { boards?: number } = {}): PieceInput {
  const { boards = 3, ...rest } = change;
  const levels = Array.from({ length: boards }, (_, i) => ({ id: `${id}-${i + 1}`, surface: 700 - i * 290 }));
  return { id, kind: 'shelf', name: id, x: 2500, y: 160, width: 1200, depth: 320, height: 700, levels, ...rest };
}

/** A tray 200 wide, 200 deep, 100 high. */
export const tray = (id: string, change: Partial<MaterialInput> = {}): MaterialInput => ({
  id,
  name: id,
  area: 'sensorial',
  strand: 'sight',
  width: 200,
  depth: 200,
  height: 100,
  ...change,
});

/**
 * Trays on the boards of shelves, each list from the left, 250 apart from x = 0: `{ 'a-1': ['m1', 'm2'] }`.
 * A list entry may be `[id, x]`.
 */
export function placed(shelves: Readonly<Record<string, readonly (string | readonly [string, number])[]>>) {
  return Object.entries(shelves).flatMap(([level, ids]) =>
    ids.map((entry, i) => {
      const [material, x] = typeof entry === 'string' ? [entry, i * 250] : entry;
      return { material, piece: level.split('-')[0] ?? '', level, x };
    }),
  );
}

/** Materials in this reading order on as many long shelves as it takes, far from crowded. */
export function shelvedInOrder(materials: readonly MaterialInput[], order: readonly string[], change: PlainRoomChange = {}): Classroom {
  const perBoard = 5;
  const boards = Math.max(1, Math.ceil(order.length / perBoard));
  const shelves = Math.ceil(boards / 3);
  const pieces = Array.from({ length: shelves }, (_, i) =>
    shelf(`s${i}`, {
      width: 2400,
      x: 3000,
      y: 400 + i * 400,
      levels: [0, 1, 2].map((b) => ({ id: `s${i}-${b}`, surface: 640 - b * 290 })),
    }),
  );
  const placements = order.map((material, i) => {
    const board = Math.floor(i / perBoard);
    const piece = `s${Math.floor(board / 3)}`;
    return { material, piece, level: `${piece}-${board % 3}`, x: (i % perBoard) * 400 };
  });
  const walk = pieces.map(({ id }) => ({ piece: id, side: 'front' as const }));
  return plainRoom({ materials: [...materials], pieces, placements, walk, ...change });
}
