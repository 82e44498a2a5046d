import { expect, it } from 'vitest';
import { SEATED_DEPTH, seatStrips } from '#model/measures/seats.ts';
import { sayChairs, sayPlace } from '#model/measures/wayWords.ts';
import { buildScene } from '#model/scene/build.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';

const table = { id: 't1', kind: 'table', name: 'Table 1', x: 3000, y: 1090, width: 1200, depth: 600, seatSides: { back: 2 } } as const;
const other = { ...table, id: 't2', name: 'Table 2', y: 3000 } as const;
const scene = buildScene(plainRoom({ pieces: [table, other] }));
const strips = seatStrips(scene);
const at = (id: string, y: number) => ({ id, x: 3000, y });

it('says where a place is', () => {
  expect(sayPlace(scene, 't1', 'wall:c1')).toBe('between Table 1 and the wall');
  expect(sayPlace(scene, 't1', 't1')).toBe('beside Table 1');
});

it('says which chairs take what is not measured, and nothing where a place ends at the table itself', () => {
  expect(sayChairs(strips, [at('t1', 790 - SEATED_DEPTH), at('wall:c1', 0)])).toEqual({
    chairs: ' The chairs of Table 1 are in use here: ',
    kept: { value: 483, unit: 'mm' },
    behind: ' behind its edge are kept for the children on them.',
  });
  expect(sayChairs(strips, [at('t1', 790 - SEATED_DEPTH), at('t2', 2700 - SEATED_DEPTH)])).toMatchObject({
    chairs: ' The chairs of Table 1 and Table 2 are in use here: ',
    behind: ' behind their edges are kept for the children on them.',
  });
  expect(sayChairs(strips, [at('t1', 1390), at('t2', 3300)])).toEqual({ chairs: '', kept: '', behind: '' });
});
