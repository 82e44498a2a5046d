import { expect, it } from 'vitest';
import { trayChanges } from '#model/analysis/moveDay/trayChanges.ts';
import { buildScene } from '#model/scene/build.ts';
import { type MovePiece, moveRoom } from '#tests/support/moveRoom.ts';

const shelf = (id: string, x: number): MovePiece => ({
  id,
  kind: 'shelf',
  x,
  y: 1000,
  width: 1400,
  depth: 400,
  height: 700,
  levels: [
    { id: 'l1', surface: 640 },
    { id: 'l2', surface: 300 },
  ],
});
const materials = ['m1', 'm2', 'm3', 'm4', 'm5', 'm6', 'm7'].map((id) => ({ id, name: id, width: 200, depth: 200, height: 100 }));
const at = (material: string, piece: string, level: string, x: number) => ({ material, piece, level, x });

it('another shelf, another board, another place in the row, to and from the table; one that only makes room is none', () => {
  const pieces = [shelf('s1', 1000), shelf('s2', 3000)];
  const classroom = moveRoom(pieces, pieces, {
    materials,
    placed: [
      [
        at('m1', 's1', 'l1', 0),
        at('m2', 's1', 'l1', 250),
        at('m3', 's1', 'l1', 500),
        at('m4', 's1', 'l1', 750),
        at('m5', 's1', 'l2', 0),
        at('m6', 's2', 'l1', 0),
      ],
      // m1 goes behind m3; m2 and m3 only move along; m4 to the other shelf; m5 a board up; m6 to the table; m7 comes.
      [
        at('m2', 's1', 'l1', 0),
        at('m3', 's1', 'l1', 250),
        at('m1', 's1', 'l1', 500),
        at('m5', 's1', 'l1', 750),
        at('m4', 's2', 'l1', 0),
        at('m7', 's2', 'l2', 0),
      ],
    ],
  });
  const found = trayChanges(buildScene(classroom, 'a1'), buildScene(classroom, 'a2'), (id) => id);
  expect(found.map(({ material, kind }) => `${material} ${kind}`).sort()).toEqual([
    'm1 order',
    'm4 shelf',
    'm5 board',
    'm6 to-table',
    'm7 from-table',
  ]);
});
