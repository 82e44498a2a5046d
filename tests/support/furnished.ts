import type { Classroom } from '#model/schema/types.ts';
import { plainRoom } from './plainRoom.ts';

/** A small furnished class: two shelves, a table, two materials on them, a second arrangement. */
export function furnished(): Classroom {
  const classroom = plainRoom({
    materials: [
      { id: 'm1', name: 'Cylinder block', strand: 'sight', step: 10, width: 560, depth: 80, height: 80, words: ['thick', 'thin'] },
      { id: 'm2', name: 'Rods', strand: 'sight', step: 20, width: 300, depth: 200, stands: { with: 'm1' } },
    ],
    pieces: [
      {
        id: 's1',
        kind: 'shelf',
        name: 'Sensorial A',
        x: 900,
        y: 200,
        width: 1200,
        depth: 320,
        height: 700,
        levels: [
          { id: 'l1', surface: 640 },
          { id: 'l2', surface: 350 },
        ],
      },
      { id: 's2', kind: 'shelf', x: 2500, y: 200, width: 1200, depth: 320, height: 700, levels: [{ id: 'l1', surface: 640 }] },
      { id: 't1', kind: 'table', x: 3000, y: 3000, width: 1200, depth: 600, seatSides: { front: 2 } },
    ],
    placements: [
      { material: 'm1', piece: 's1', level: 'l1', x: 40 },
      { material: 'm2', piece: 's1', level: 'l2', x: 100 },
    ],
    walk: [
      { piece: 's1', side: 'front' },
      { piece: 's2', side: 'front' },
    ],
    notes: [{ id: 'n1', on: 's1', text: 'measure again' }],
    enrolment: [{ from: '2027-04-01', groups: [{ fromMonths: 36, toMonths: 48, count: 10 }] }],
    current: 'a1',
  });
  return { ...classroom, arrangements: [...classroom.arrangements, { id: 'a2', name: 'By the window', pieces: [], placements: [] }] };
}
