import { describe, expect, it } from 'vitest';
import { measureWays } from '#model/measures/ways.ts';
import { buildScene } from '#model/scene/build.ts';
import { ClipperWays } from '#tests/support/clipperWays.ts';
import { randomWayRoom } from '#tests/support/randomWayRoom.ts';

/**
 * Widths of ways against clipper2 (general-purpose polygon clipping and offsetting). A width is right to `WITHIN`
 * when a disc that much narrower gets through and one that much wider does not: the two probes between which a
 * bisection on offsets would end.
 */
const WITHIN = 0.15;
const ROOMS = 500;
const FROM = 1;

describe('ways against bisection on offsets', () => {
  it.each(Array.from({ length: 10 }, (_, k) => k))(
    `agrees in ${ROOMS / 10} rooms, batch %i`,
    (batch) => {
      const wrong: string[] = [];
      let checked = 0;
      for (let seed = FROM + batch; seed < FROM + ROOMS; seed += 10) {
        const scene = buildScene(randomWayRoom(seed));
        if (!scene.room.isSound) {
          wrong.push(`seed ${seed}: the walls do not hold`);
          continue;
        }
        const other = new ClipperWays(scene);
        for (const way of measureWays(scene)) {
          if (way.from === null) continue;
          checked++;
          const name = `seed ${seed}: ${way.to} ${way.side ?? ''} from ${way.from}, ${way.width.toFixed(3)}`;
          if (way.width > WITHIN && !other.canReach(way.target, way.width - WITHIN)) wrong.push(`${name} is too wide`);
          if (other.canReach(way.target, way.width + WITHIN)) wrong.push(`${name} is too narrow`);
        }
      }
      expect(wrong).toEqual([]);
      expect(checked).toBeGreaterThan(100);
    },
    60_000,
  );
});
