import { expect, it } from 'vitest';
import { namedSide, sideName } from '#client/front/shelfNames.ts';
import { buildScene } from '#model/scene/build.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';

const shelf = { kind: 'shelf', width: 1200, depth: 320, height: 700 } as const;
const scene = buildScene(
  plainRoom({
    pieces: [
      { ...shelf, id: 's1', name: 'Sensorial A', x: 1000, y: 160 },
      { ...shelf, id: 's2', name: '', x: 3000, y: 160 },
      { ...shelf, id: 's3', name: 'Shelf 3', x: 5000, y: 160 },
    ],
  }),
);

it('calls a shelf by its name, as findings do, and by its number on the plan', () => {
  expect(scene.sides.map((side) => namedSide(scene, side))).toEqual(['Sensorial A (shelf 1)', 'shelf 2', 'shelf 3']);
  expect(scene.sides.map((side) => sideName(scene, side))).toEqual(['shelf 1', 'shelf 2', 'shelf 3']);
});
