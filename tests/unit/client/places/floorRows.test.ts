import { expect, it } from 'vitest';
import { floorRows } from '#client/places/floorRows.ts';
import { measuresOf } from '#model/measures/measures.ts';
import { buildScene } from '#model/scene/build.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';

const room = plainRoom({
  ruleSet: 'us-california',
  pieces: [
    { id: 's1', kind: 'shelf', x: 1000, y: 1000, width: 1000, depth: 500 },
    { id: 'c1', kind: 'shelf', x: 3000, y: 3000, width: 2000, depth: 500, closed: true },
  ],
});

it('lists what two rules take off, which adds up to what each counts', () => {
  const sets = measuresOf(buildScene(room)).placesByRuleSet();
  const california = sets[0];
  const england = sets.find((set) => set.rules.id === 'england');
  if (!california?.counted || !england?.counted) throw new Error('both rules count the floor');
  const rows = floorRows(california, england);
  const shelf = rows.find((row) => row.text.includes('open shelves'));
  expect(shelf?.inForce).toEqual({ m2: expect.closeTo(0.5, 6), isOpen: false });
  expect(shelf?.other).toEqual({ m2: expect.closeTo(0.5, 6), isOpen: true });
  for (const [set, side] of [
    [california, 'inForce'],
    [england, 'other'],
  ] as const) {
    const off = rows.reduce((sum, row) => sum + (row[side]?.m2 ?? 0), 0);
    expect((set.counted?.inside ?? 0) - off).toBeCloseTo(set.counted?.least ?? 0, 6);
  }
});
