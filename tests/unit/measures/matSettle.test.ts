import loadHighs from 'highs';
import { describe, expect, it } from 'vitest';
import { pickWith } from '#model/geometry/pickMost.ts';
import { seededRandom } from '#model/geometry/seededRandom.ts';
import { matFloor } from '#model/measures/floor.ts';
import { MatCells, type MatWindow } from '#model/measures/matCells.ts';
import { MatLimits } from '#model/measures/matLimits.ts';
import { type MatGround, type Settled, settle } from '#model/measures/matSettle.ts';
import { MatWays } from '#model/measures/matWays.ts';
import { waysKeeper } from '#model/measures/waysKeep.ts';
import { buildScene } from '#model/scene/build.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';

const pick = pickWith(await loadHighs());

/** An empty room; mats of 1200 by 750, 300 apart: a row of n takes n x 1500 - 300 or n x 1050 - 300. */
function groundOf(width: number, depth: number): MatGround {
  const corners = [
    [0, 0],
    [width, 0],
    [width, depth],
    [0, depth],
  ].map(([x = 0, y = 0], k) => ({ id: `c${k + 1}`, x, y }));
  const scene = buildScene(plainRoom({ room: { corners, openings: [] }, floorWork: { mat: { width: 1200, depth: 750 }, gap: 300 } }));
  const tile = { width: 1200, depth: 750, gap: 300 };
  const ways = new MatWays(waysKeeper(scene));
  const cells = new MatCells(tile, ways);
  for (const _ of cells.lookAt(matFloor(scene, []), [0]));
  return { tile, cells, limits: new MatLimits(tile, cells), ways, pick, random: seededRandom(1) };
}

const wholeOf = ({ cells }: MatGround): MatWindow => new Set(cells.middles().keys());
const leftOf = ({ cells }: MatGround, x: number): MatWindow => new Set(cells.middles().flatMap((p, k) => (p.x < x ? [k] : [])));

function settled(ground: MatGround, window: MatWindow, rounds = 40): Settled {
  let last: Settled = { places: [], most: Infinity, round: 0 };
  for (last of settle(ground, window, last, { rounds, lastSize: 2, nodes: 2000 }));
  return last;
}

describe('mats settled in a window', () => {
  it('of the whole floor: as many as its rows take, and not one more', () => {
    const ground = groundOf(2760, 1860);
    expect(settled(ground, wholeOf(ground))).toMatchObject({ most: 4, places: { length: 4 } });
  });

  it('where mats fit to the mm the most is as exact; laying them there is left to the search that comes before', () => {
    expect(settled(groundOf(2700, 1800), wholeOf(groundOf(2700, 1800))).most).toBe(4);
    expect(settled(groundOf(2699, 1799), wholeOf(groundOf(2699, 1799))).most).toBe(2);
  });

  it('of a part: no fewer than lie in it, and the mats that were laid lie there', () => {
    const ground = groundOf(5820, 1860);
    const whole = settled(ground, wholeOf(ground));
    expect(whole.places.length).toBe(8);
    const window = leftOf(ground, 2850);
    const part = settled(ground, window);
    expect(part.most).toBeGreaterThanOrEqual(ground.cells.placesIn(window, whole.places).length);
    expect(ground.cells.placesIn(window, part.places)).toHaveLength(part.places.length);
  });

  it('what a part holds at most limits the whole', () => {
    const ground = groundOf(5700, 1800);
    const window = leftOf(ground, 2850);
    const rest: MatWindow = new Set([...wholeOf(ground)].filter((k) => !window.has(k)));
    ground.limits.atMost(window, 1);
    ground.limits.atMost(rest, 2);
    expect(settled(ground, wholeOf(ground)).most).toBe(3);
  });

  it('cells that were cut stay those of their window, and no place is lost', () => {
    const ground = groundOf(2700, 1800);
    const window = leftOf(ground, 1350);
    const before = ground.cells.of(window);
    for (const _ of ground.cells.cut(before, 100));
    const after = ground.cells.of(window);
    expect(after.length).toBeGreaterThan(before.length);
    const areaOf = (cells: typeof before): number => cells.reduce((sum, c) => sum + (c.maxU - c.minU) * (c.maxV - c.minV), 0);
    expect(areaOf(after)).toBeCloseTo(areaOf(before), -2);
    expect(settled(ground, wholeOf(ground)).most).toBe(4);
  });
});
