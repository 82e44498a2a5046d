import type { ClassroomInput } from '#model/schema/types.ts';

type Arrangement = ClassroomInput['arrangements'][number];
export type PieceInput = NonNullable<Arrangement['pieces']>[number];

/** The demo's room: 8.4 x 7.6 m, L-shaped, 57.6 m². Invented, with the proportions of a real one. */
export const room: ClassroomInput['room'] = {
  corners: [
    { id: 'c1', x: 0, y: 0 },
    { id: 'c2', x: 8400, y: 0 },
    { id: 'c3', x: 8400, y: 5200 },
    { id: 'c4', x: 5800, y: 5200 },
    { id: 'c5', x: 5800, y: 7600 },
    { id: 'c6', x: 0, y: 7600 },
  ],
  openings: [
    {
      id: 'hall',
      kind: 'door',
      name: 'hall',
      from: 'c2',
      offset: 3100,
      width: 950,
      clear: 880,
      depth: 150,
      swing: 'in-left',
      exit: true,
      main: true,
    },
    {
      id: 'garden',
      kind: 'door',
      name: 'garden',
      from: 'c3',
      offset: 1520,
      width: 900,
      clear: 830,
      depth: 300,
      swing: 'out-right',
      exit: true,
    },
    { id: 'north-1', kind: 'window', from: 'c1', offset: 700, width: 1800, sill: 850 },
    { id: 'north-2', kind: 'window', from: 'c1', offset: 4750, width: 1800, sill: 850 },
    { id: 'west', kind: 'window', from: 'c6', offset: 3700, width: 1230, sill: 850 },
  ],
  fixtures: [{ id: 'sink', kind: 'sink', name: 'sink', x: 7850, y: 4985, width: 900, depth: 430, height: 560, rotation: 180, front: true }],
  toilets: 3,
  basins: 3,
  survey: {
    walls: [
      { from: 'c1', length: 8400, turn: 90 },
      { from: 'c2', length: 5200, turn: 90 },
      { from: 'c3', length: 2600, turn: -90 },
      { from: 'c4', length: 2400, turn: 90 },
      { from: 'c5', length: 5800, turn: 90 },
      { from: 'c6', length: 7600, turn: 90 },
    ],
    diagonals: [{ from: 'c1', to: 'c3', length: 9879 }],
  },
};

const levels = (surfaces: readonly number[]): PieceInput['levels'] => surfaces.map((surface, i) => ({ id: `l${i + 1}`, surface }));

/** A children's shelf, 0.70 high, boards at 0.64, 0.35 and 0.06. */
export function shelf(
  id: string,
  name: string,
  x: number,
  y: number,
  rotation: number,
  width: number,
  over: Partial<PieceInput> = {},
): PieceInput {
  return {
    id,
    kind: 'shelf',
    name,
    x,
    y,
    rotation,
    width,
    depth: 380,
    height: 700,
    anchored: true,
    levels: levels([640, 350, 60]),
    ...over,
  };
}

export const boards = levels;

export function table(
  id: string,
  x: number,
  y: number,
  rotation: number,
  seatSides: PieceInput['seatSides'],
  over: Partial<PieceInput> = {},
): PieceInput {
  return { id, kind: 'table', name: `table ${id.slice(1)}`, x, y, rotation, width: 1200, depth: 600, height: 460, seatSides, ...over };
}
