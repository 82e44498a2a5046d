import { describe, expect, it } from 'vitest';
import { ringOf as ringOfBox } from '#model/geometry/packingCells.ts';
import { seededRandom } from '#model/geometry/seededRandom.ts';
import { type Tile, tileRing } from '#model/geometry/tile.ts';
import { turn } from '#model/geometry/vec.ts';
import { MatWays, type Taken } from '#model/measures/matWays.ts';
import { waysKeeper } from '#model/measures/waysKeep.ts';
import { buildScene } from '#model/scene/build.ts';
import { areApart, type LaidMat } from '#tests/support/matChecker.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';
import { runs } from '#tests/support/runs.ts';

// The checker of layings stands outside: it tells whether two mats lie apart without any of what is tested here.

const tile: Tile = { width: 1200, depth: 750, gap: 300 };

/** A passage from a door to a shelf at its other end. */
const passage = (wide: number) =>
  buildScene(
    plainRoom({
      room: {
        corners: [
          { id: 'c1', x: 0, y: 0 },
          { id: 'c2', x: 9000, y: 0 },
          { id: 'c3', x: 9000, y: wide },
          { id: 'c4', x: 0, y: wide },
        ],
        openings: [{ id: 'd1', kind: 'door', from: 'c4', offset: (wide - 1000) / 2, width: 1000, clear: 950, swing: 'none' }],
      },
      floorWork: { mat: { width: tile.width, depth: tile.depth }, gap: tile.gap, wanted: 1 },
      pieces: [{ id: 's1', kind: 'shelf', label: 'Shelf', x: 8840, y: wide / 2, width: wide - 20, depth: 320, height: 700, rotation: 90 }],
    }),
  );

const boxAt = (x: number, y: number, width: number, depth: number): Taken => {
  const box = { minU: x - width / 2, maxU: x + width / 2, minV: y - depth / 2, maxV: y + depth / 2 };
  return { box, frame: 0, ring: ringOfBox(box, 0) };
};

/** Often as far off as can be. */
const somewhere = (random: () => number): number => (random() < 0.6 ? Math.round(random()) : random());

/** A mat, at one of the turns, that covers the box; null: it is larger than a mat. */
function matOver({ ring }: Taken, turns: readonly number[], random: () => number): LaidMat | null {
  const rotation = turns[Math.floor(random() * turns.length)] as number;
  const seen = ring.map((p) => turn(p, -rotation));
  const [us, vs] = [seen.map(({ x }) => x), seen.map(({ y }) => y)];
  const [freeU, freeV] = [tile.width - (Math.max(...us) - Math.min(...us)), tile.depth - (Math.max(...vs) - Math.min(...vs))];
  if (freeU < 0 || freeV < 0) return null;
  const middle = turn(
    { x: Math.max(...us) + freeU * somewhere(random) - tile.width / 2, y: Math.max(...vs) + freeV * somewhere(random) - tile.depth / 2 },
    rotation,
  );
  return { ...middle, width: tile.width, depth: tile.depth, rotation };
}

const ringOf = ({ x, y, rotation }: LaidMat) => tileRing(tile, { x, y, turn: rotation });
const oneOf = <T>(list: readonly T[], random: () => number): T => list[Math.floor(random() * list.length)] as T;

describe('boxes that stand for one another', () => {
  const ways = new MatWays(waysKeeper(passage(3000)));
  const narrow = new MatWays(waysKeeper(passage(1200)));
  /** Drawn in there is next to no room to a side, of thin ones to two, of a small one to all. */
  const shutTogether = [
    { ways, width: 500, depth: 500, ys: [850, 2150], isDrawnIn: true },
    { ways, width: 40, depth: 500, ys: [850, 2150], isDrawnIn: false },
    { ways: narrow, width: 40, depth: 40, ys: [600], isDrawnIn: false },
  ] as const;
  const cases = [
    { name: 'mats at one turn', turns: [0, 90], isOneFrame: true },
    { name: 'mats at several turns', turns: [0, 90, 45, 135], isOneFrame: false },
  ] as const;

  it.each(cases)('$name: no two mats cover some of the same, and whatever one covers of each, the way is shut', ({ turns, isOneFrame }) => {
    const random = seededRandom(7);
    let widened = 0;
    let closest = 0;
    for (let run = 0; run < runs(30, 300); run++) {
      const x = 2500 + 4000 * random();
      const { ways, width, depth, ys, isDrawnIn } = oneOf(shutTogether, random);
      const abreast = ys.map((y, k) => boxAt(x + 400 * k * (random() - 0.5), y, width, depth));
      if (!ways.shuts(abreast)) continue;
      const groups = ways.widened(isDrawnIn ? ways.drawnIn(ways.least(abreast)) : abreast, { gap: tile.gap, isOneFrame }, random);
      expect(groups.every((group) => group.length > 0)).toBe(true);
      for (const group of groups) {
        widened += group.length - 1;
        for (let pair = 0; pair < 100; pair++) {
          const [p, q] = [matOver(oneOf(group, random), turns, random), matOver(oneOf(group, random), turns, random)];
          if (p && q) expect(areApart(p, q, tile.gap), `run ${run}`).toBe(false);
        }
      }
      for (let set = 0; set < 10; set++) {
        const mats = groups.flatMap((group) => matOver(oneOf(group, random), turns, random) ?? []);
        if (mats.length < groups.length) continue;
        closest++;
        expect(ways.keeps(mats.map(ringOf)), `run ${run}`).toBe(false);
      }
    }
    // Nothing would be tried where none were found.
    expect(widened).toBeGreaterThan(20);
    expect(closest).toBeGreaterThan(50);
  });

  it('where mats may touch there are none', () => {
    const abreast = [boxAt(4000, 850, 500, 500), boxAt(4000, 2150, 500, 500)];
    expect(ways.shuts(abreast)).toBe(true);
    const groups = ways.widened(abreast, { gap: 0, isOneFrame: true }, seededRandom(1));
    expect(groups.map((group) => group.length)).toEqual([1, 1]);
  });
});
