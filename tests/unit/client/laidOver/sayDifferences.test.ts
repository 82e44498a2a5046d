import { expect, it } from 'vitest';
import { sayDifferences } from '#client/laidOver/sayDifferences.ts';
import { type MovePiece, moveRoom } from '#tests/support/moveRoom.ts';

const shelf = (id: string, more: Partial<MovePiece>): MovePiece => ({
  id,
  kind: 'shelf',
  name: '',
  x: 1000,
  y: 1000,
  width: 1000,
  depth: 400,
  ...more,
});

it('says what differs in the shown arrangement from the one under it; chairs go with their table', () => {
  const under = [
    shelf('s1', {}),
    shelf('s2', { x: 2500 }),
    shelf('s3', { x: 4000, name: 'old' }),
    { id: 't1', kind: 'table', x: 3000, y: 3000, width: 1200, depth: 600 } as const,
    { id: 'k1', kind: 'seat', x: 3000, y: 3400, width: 350, depth: 350, table: 't1' } as const,
  ];
  const shown = [
    shelf('s1', { x: 1300, y: 600, rotation: 90 }),
    shelf('s2', { x: 2500, width: 900 }),
    shelf('s7', { x: 5000, name: 'fresh' }),
    { ...under[3], y: 3500 } as MovePiece,
    { ...under[4], y: 3900 } as MovePiece,
  ];
  const classroom = moveRoom(under, shown, {
    materials: [{ id: 'm1', name: 'thing' }],
    placed: [[], [{ material: 'm1', piece: 's1', x: 0 }]],
  });
  const [a, b] = classroom.arrangements;
  if (!a || !b) throw new Error('two arrangements');
  expect(sayDifferences(classroom, a, b).map(({ text }) => text)).toEqual([
    'Shelf 1: 0.40 m north and 0.30 m east and turned a quarter to the right',
    'Shelf 2: 0.90 m long instead of 1.00 m',
    'Shelf 3 is not here',
    'Table T1: 0.50 m south',
    'Shelf 7 is new',
    '1 tray in another place: see the Move day sheet',
  ]);
  expect(sayDifferences(classroom, a, a)).toEqual([]);
});
