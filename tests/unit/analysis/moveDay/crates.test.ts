import { expect, it } from 'vitest';
import { crateLetter, packCrates } from '#model/analysis/moveDay/crates.ts';
import { buildScene } from '#model/scene/build.ts';
import { type MovePiece, moveRoom } from '#tests/support/moveRoom.ts';

const shelf: MovePiece = {
  id: 's1',
  kind: 'shelf',
  x: 1000,
  y: 1000,
  width: 2000,
  depth: 400,
  height: 700,
  levels: [
    { id: 'l1', surface: 640 },
    { id: 'l2', surface: 300 },
  ],
};
const material = (id: string, mass: number | null, more: object = {}) => ({
  id,
  name: id,
  area: 'sensorial',
  width: 200,
  depth: 200,
  height: 50,
  mass,
  ...more,
});
const at = (id: string, level: string, x: number) => ({ material: id, piece: 's1', level, x });

function packed(mostKg: number) {
  const materials = [
    material('m1', 4),
    material('m2', 5),
    material('m3', 3),
    material('m4', null),
    material('m5', 12),
    material('m6', 1, { area: 'language' }),
    material('m7', 1, { width: 900 }),
    material('m8', 2),
  ];
  // Reading order on the shelf: m3 m1 m2 on the top board, then m4 m5 m6 m7; m8 goes to the table.
  const placed = [
    at('m3', 'l1', 0),
    at('m1', 'l1', 300),
    at('m2', 'l1', 600),
    at('m4', 'l2', 0),
    at('m5', 'l2', 300),
    at('m6', 'l2', 600),
    at('m7', 'l2', 900),
  ];
  const classroom = moveRoom([shelf], [shelf], { materials, placed: [[...placed, at('m8', 'l2', 1800)], placed] });
  return packCrates(classroom.materials, buildScene(classroom, 'a2'), (id) => id, ['s1'], mostKg);
}

it('packs in reading order, never heavier than asked but for one tray by itself, one area and one shelf a crate', () => {
  const { crates, byHand } = packed(10);
  expect(crates.map(({ letter, materials, kg, unknown }) => [letter, materials.join(' '), kg, unknown])).toEqual([
    ['A', 'm3 m1', 7, 0],
    ['B', 'm2 m4', 6, 1],
    ['C', 'm5', 12, 0],
    ['D', 'm6', 1, 0],
    ['E', 'm8', 2, 0],
  ]);
  expect(byHand).toEqual(['m7']);
  expect(crates.map(({ to }) => to?.piece ?? 'table')).toEqual(['s1', 's1', 's1', 's1', 'table']);
  expect(crates[1]?.to?.places.map(({ level }) => level)).toEqual(['l1', 'l2']);
});

it('more in a crate where more is carried', () => {
  expect(packed(30).crates.map(({ materials }) => materials.join(' '))).toEqual(['m3 m1 m2 m4 m5', 'm6', 'm8']);
});

it('letters go on after Z', () => {
  expect([0, 25, 26, 27, 52].map(crateLetter)).toEqual(['A', 'Z', 'AA', 'AB', 'BA']);
});
