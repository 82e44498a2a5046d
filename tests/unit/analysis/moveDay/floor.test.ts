import { expect, it } from 'vitest';
import { pieceChanges } from '#model/analysis/moveDay/differences.ts';
import { MoveFloor } from '#model/analysis/moveDay/floor.ts';
import { moveUnits, precedencesOf } from '#model/analysis/moveDay/units.ts';
import { buildScene } from '#model/scene/build.ts';
import { type MovePiece, moveRoom } from '#tests/support/moveRoom.ts';

const box = (id: string, x: number, y: number, width = 1000, depth = 400): MovePiece => ({ id, kind: 'other', x, y, width, depth });

function setting(before: readonly MovePiece[], after: readonly MovePiece[]) {
  const scene = buildScene(moveRoom(before, after), 'a1');
  const later = buildScene(moveRoom(before, after), 'a2');
  const units = moveUnits(pieceChanges(scene.arrangement, later.arrangement));
  return { units, floor: new MoveFloor(scene, units), precedences: precedencesOf(units) };
}

it('what moves is a unit, what stays is in the way', () => {
  const { units, floor, precedences } = setting(
    [box('p1', 2000, 2500), box('p2', 3500, 2500), box('p3', 5000, 4000)],
    [box('p1', 3500, 2500), box('p2', 4000, 1000), box('p3', 5000, 4000)],
  );
  expect(units.map(({ id }) => id)).toEqual(['p1', 'p2']);
  expect(floor.staying.map(({ id }) => id)).toEqual(['p3']);
  // p2 has to be gone before p1 comes.
  expect(precedences).toEqual([{ first: 1, second: 0, kind: 'off-on' }]);
});

it('nothing is set aside before an exit: 400 to 1300 mm of the north wall, 1200 mm deep', () => {
  const { floor } = setting([], []);
  const at = (x: number, y: number) => buildScene(moveRoom([box('p1', x, y, 400, 400)], []), 'a1').bodies;
  expect(floor.isBeforeDoor(at(850, 600))).toBe(true);
  expect(floor.isBeforeDoor(at(850, 1402))).toBe(false);
  expect(floor.isBeforeDoor(at(1502, 600))).toBe(false);
});

it('the nearest free floor, clear of what stands meanwhile; none where there is none', () => {
  const { units, floor } = setting([box('p1', 3000, 2500)], [box('p1', 3000, 3000)]);
  const [unit] = units;
  if (!unit) throw new Error('a unit');
  const meanwhile = buildScene(moveRoom([box('p2', 3000, 2500)], []), 'a1').bodies;
  const [place] = floor.placeAside(unit, meanwhile) ?? [];
  // Beside it: 400 above or below, to the 100 mm of the grid.
  expect(place && Math.hypot(place.center.x - 3000, place.center.y - 2500)).toBeCloseTo(400, 6);
  const full = buildScene(moveRoom([box('p2', 3000, 2500, 5800, 4800)], []), 'a1').bodies;
  expect(floor.placeAside(unit, full)).toBeNull();
});
