import { describe, expect, it } from 'vitest';
import { seededRandom } from '#model/geometry/seededRandom.ts';
import { measureSight } from '#model/measures/sight.ts';
import { buildScene } from '#model/scene/build.ts';
import type { Scene } from '#model/scene/types.ts';
import type { Classroom } from '#model/schema/types.ts';
import { randomWayRoom } from '#tests/support/randomWayRoom.ts';
import { runs } from '#tests/support/runs.ts';
import { withRoom } from '#tests/support/withRoom.ts';

/**
 * Hidden floor against lines in space: from the eye to a head above a point, through upright prisms, by plain
 * geometry that shares nothing with the shadows. The rooms are random; the last line of a failure names the seed.
 */
const SEEDS = Array.from({ length: runs(40, 160) }, (_, i) => 4200 + i);
const POINTS = 500;
/** mm from an edge of the drawn patches within which a point is not asked: they are drawn to 1e-3. */
const ON_EDGE = 0.05;

type XY = { readonly x: number; readonly y: number };
type Ring = readonly XY[];

/** Random heights (some not known, some above the eye), one to three eyes, some below the head of a child. */
function watchedRoom(seed: number): Classroom {
  const random = seededRandom(seed);
  const classroom = randomWayRoom(seed);
  const arrangement = classroom.arrangements[0];
  if (!arrangement) throw new Error('no arrangement');
  for (const piece of arrangement.pieces) {
    piece.height = random() < 0.1 ? null : 400 + Math.round(1400 * random());
    if (random() < 0.2) piece.seeThrough = random() < 0.5;
  }
  const xs = classroom.room.corners.map((c) => c.x);
  const ys = classroom.room.corners.map((c) => c.y);
  const count = 1 + Math.floor(2.2 * random());
  arrangement.watch = Array.from({ length: count }, (_, i) => ({
    id: `w${i}`,
    x: Math.max(...xs) * random(),
    y: Math.max(...ys) * random(),
    eye: random() < 0.15 ? 500 : 900 + Math.round(800 * random()),
  }));
  return classroom;
}

const holds = (ring: Ring, p: XY): boolean => {
  let turns = 0;
  ring.forEach((a, i) => {
    const b = ring[(i + 1) % ring.length] as XY;
    const side = (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);
    if (a.y <= p.y && b.y > p.y && side > 0) turns++;
    if (a.y > p.y && b.y <= p.y && side < 0) turns--;
  });
  return turns !== 0;
};

/** Shares along p-q at which it crosses a ring's sides. */
function crossings(ring: Ring, p: XY, q: XY): number[] {
  const found: number[] = [];
  ring.forEach((a, i) => {
    const b = ring[(i + 1) % ring.length] as XY;
    const det = (q.x - p.x) * (b.y - a.y) - (q.y - p.y) * (b.x - a.x);
    if (det === 0) return;
    const t = ((a.x - p.x) * (b.y - a.y) - (a.y - p.y) * (b.x - a.x)) / det;
    const u = ((a.x - p.x) * (q.y - p.y) - (a.y - p.y) * (q.x - p.x)) / det;
    if (t > 0 && t < 1 && u >= 0 && u < 1) found.push(t);
  });
  return found.sort((s, t) => s - t);
}

/** True when the straight line from the eye to a head over p goes through the prism. */
function isStopped(footprint: Ring, height: number, eye: XY & { height: number }, p: XY, head: number): boolean {
  const cuts = [0, ...crossings(footprint, eye, p), 1];
  return cuts.some((from, i) => {
    const to = cuts[i + 1];
    if (to === undefined) return false;
    const middle = (from + to) / 2;
    if (!holds(footprint, { x: eye.x + (p.x - eye.x) * middle, y: eye.y + (p.y - eye.y) * middle })) return false;
    const heights = [from, to].map((t) => eye.height + (head - eye.height) * t);
    return Math.min(...heights) < height;
  });
}

/** Null: the point is furniture. */
function isHidden(scene: Scene, eyes: readonly (XY & { height: number })[], p: XY): boolean | null {
  const standing = scene.bodies.filter((b) => b.isObstacle);
  if (standing.some((b) => holds(b.footprint, p))) return null;
  const { head } = scene.classroom.children;
  return eyes.every((eye) => {
    if (crossings(scene.room.outline, eye, p).length > 0) return true;
    return standing.some(
      (b) => !b.isSeeThrough && b.height !== null && !holds(b.footprint, eye) && isStopped(b.footprint, b.height, eye, p, head),
    );
  });
}

function toEdge(ring: Ring, p: XY): number {
  return Math.min(
    ...ring.map((a, i) => {
      const b = ring[(i + 1) % ring.length] as XY;
      const square = (b.x - a.x) ** 2 + (b.y - a.y) ** 2;
      const t = square === 0 ? 0 : Math.max(0, Math.min(1, ((p.x - a.x) * (b.x - a.x) + (p.y - a.y) * (b.y - a.y)) / square));
      return Math.hypot(a.x + t * (b.x - a.x) - p.x, a.y + t * (b.y - a.y) - p.y);
    }),
  );
}

describe('hidden floor against lines in space', () => {
  let asked = 0;
  let hiddenOnes = 0;
  it.each(SEEDS)('seed %i', (seed) => {
    const classroom = watchedRoom(seed);
    const scene = buildScene(classroom);
    const sight = measureSight(scene);
    if (!sight) throw new Error(`seed ${seed}: no sight`);
    if (sight.eyes.length === 0) return;
    const random = seededRandom(seed + 1);
    const xs = scene.room.outline.map((c) => c.x);
    const ys = scene.room.outline.map((c) => c.y);
    for (let i = 0; i < POINTS; i++) {
      const p = { x: Math.max(...xs) * random(), y: Math.max(...ys) * random() };
      if (!holds(scene.room.outline, p)) continue;
      const expected = isHidden(scene, sight.eyes, p);
      if (expected === null) continue;
      const inPatch = sight.hidden.some(({ outline, holes }) => holds(outline, p) && !holes.some((hole) => holds(hole, p)));
      asked++;
      if (expected) hiddenOnes++;
      if (inPatch === expected) continue;
      const near = Math.min(...sight.hidden.flatMap(({ outline, holes }) => [outline, ...holes]).map((ring) => toEdge(ring, p)));
      withRoom(`seed ${seed}`, classroom, () =>
        expect(near, `(${p.x}, ${p.y}) ${expected ? 'is hidden' : 'is seen'}`).toBeLessThan(ON_EDGE),
      );
    }
  });
  it('asked of more than ten thousand points, many of each kind', () => {
    expect(asked).toBeGreaterThan(10_000);
    expect(hiddenOnes).toBeGreaterThan(1000);
    expect(asked - hiddenOnes).toBeGreaterThan(2500);
  });
});
