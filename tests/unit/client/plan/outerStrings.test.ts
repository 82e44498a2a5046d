import { expect, it } from 'vitest';
import { isOutermost } from '#client/plan/outerStrings.ts';
import { boundingBox } from '#model/geometry/polygon.ts';
import { buildRoom } from '#model/scene/room.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';

/** Which walls of these corners (mm) have a dimension string. */
function strings(...corners: readonly (readonly [x: number, y: number])[]): boolean[] {
  const { room } = plainRoom({ room: { corners: corners.map(([x, y], i) => ({ id: `c${i + 1}`, x, y })) } });
  const built = buildRoom({ ...room, openings: [] });
  return built.walls.map((wall) => isOutermost(wall, boundingBox(built.outline)));
}

it('draws one at every wall on the edge', () =>
  expect(strings([0, 0], [6000, 0], [6000, 5000], [0, 5000])).toEqual([true, true, true, true]));
it('draws one where the walls lean a little', () =>
  expect(strings([0, 0], [6000, 4], [5960, 5000], [30, 4985])).toEqual([true, true, true, true]));
it('draws one along a slanted wall', () => expect(strings([0, 0], [6000, 0], [4000, 5000], [0, 5000])).toEqual([true, true, true, true]));
it('draws none at an inner wall', () =>
  expect(strings([0, 0], [6000, 0], [6000, 3000], [4000, 3000], [4000, 5000], [0, 5000])).toEqual([true, true, false, false, true, true]));
