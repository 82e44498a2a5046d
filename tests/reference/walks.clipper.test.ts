import { Clipper, EndType, FillRule, JoinType, type PathD, type PathsD } from 'clipper2-ts';
import { describe, expect, it } from 'vitest';
import { seededRandom } from '#model/geometry/seededRandom.ts';
import type { Point } from '#model/geometry/vec.ts';
import { seatStrips } from '#model/measures/seats.ts';
import { wayBetween } from '#model/measures/wayBetween.ts';
import { buildScene } from '#model/scene/build.ts';
import type { Scene } from '#model/scene/types.ts';
import { randomWayRoom } from '#tests/support/randomWayRoom.ts';

/**
 * Shortest walks against a plain search over every pair of corners that see each other on clipper2's offsets of the
 * obstacles. Offsets draw an arc as chords within 0.5 mm of it, so each corner may be cut by about that much.
 */
const ARC = 0.5;
const WITHIN = 4;
const BODY = 300;
const SEEDS = Array.from({ length: 14 }, (_, i) => 9001 + i);

const path = (ring: readonly Point[]): PathD => {
  const made = ring.map(({ x, y }) => ({ x, y }));
  return Clipper.areaD(made) < 0 ? made.reverse() : made;
};

function freeFloor(scene: Scene): PathsD {
  const rings = [...scene.bodies.filter((b) => b.isObstacle).map((b) => b.footprint), ...seatStrips(scene).map((s) => s.strip)];
  const grow = (ring: readonly Point[], by: number): PathsD =>
    Clipper.inflatePathsD([path(ring)], by, JoinType.Round, EndType.Polygon, 2, 4, ARC);
  return Clipper.differenceD(
    grow(scene.room.outline, -BODY / 2),
    rings.flatMap((ring) => grow(ring, BODY / 2)),
    FillRule.NonZero,
    4,
  );
}

const side = (a: Point, b: Point, c: Point): number => (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);

function holds(free: PathsD, p: Point): boolean {
  let isIn = false;
  for (const ring of free)
    ring.forEach((a, i) => {
      const b = ring[(i + ring.length - 1) % ring.length] as Point;
      if (a.y > p.y !== b.y > p.y && p.x < ((b.x - a.x) * (p.y - a.y)) / (b.y - a.y) + a.x) isIn = !isIn;
    });
  return isIn;
}

/** Nothing of the outline crosses the line, and its middle is free or lies on an edge. */
function sees(free: PathsD, edges: readonly (readonly [Point, Point])[], p: Point, q: Point, isEdge: boolean): boolean {
  if (isEdge) return true;
  const long = Math.hypot(q.x - p.x, q.y - p.y);
  for (const [a, b] of edges) {
    const s1 = side(p, q, a) / long;
    const s2 = side(p, q, b) / long;
    if (s1 > 1e-6 === s2 > 1e-6 || s1 < -1e-6 === s2 < -1e-6) continue;
    const t1 = side(a, b, p);
    const t2 = side(a, b, q);
    const size = Math.hypot(b.x - a.x, b.y - a.y) * 1e-6;
    if ((t1 > size && t2 < -size) || (t1 < -size && t2 > size)) return false;
  }
  return holds(free, { x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 });
}

function shortest(free: PathsD, start: Point, goal: Point): number | null {
  const nodes: Point[] = [start, goal];
  const edges: [Point, Point][] = [];
  const ringNext = new Map<Point, Point>();
  for (const ring of free)
    ring.forEach((a, i) => {
      const b = ring[(i + 1) % ring.length] as Point;
      const before = ring[(i + ring.length - 1) % ring.length] as Point;
      edges.push([a, b]);
      ringNext.set(a, b);
      // Rings run with free floor on one side: only corners that stick out into it bend a walk.
      if (side(before, a, b) < 0) nodes.push(a);
    });
  const best = nodes.map(() => Infinity);
  const isDone = nodes.map(() => false);
  best[0] = 0;
  for (;;) {
    let at = -1;
    nodes.forEach((_, i) => {
      if (!isDone[i] && (best[i] as number) < (at < 0 ? Infinity : (best[at] as number))) at = i;
    });
    if (at < 0) return null;
    if (at === 1) return best[1] as number;
    isDone[at] = true;
    const p = nodes[at] as Point;
    nodes.forEach((q, i) => {
      const length = (best[at] as number) + Math.hypot(p.x - q.x, p.y - q.y);
      if (isDone[i] || length >= (best[i] as number)) return;
      if (sees(free, edges, p, q, ringNext.get(p) === q || ringNext.get(q) === p)) best[i] = length;
    });
  }
}

describe('shortest walks against a search on offsets', () => {
  it.each(SEEDS)('of a body 300 mm wide (seed %i)', (seed) => {
    const scene = buildScene(randomWayRoom(seed));
    const free = freeFloor(scene);
    const random = seededRandom(seed);
    const place = (): Point => {
      for (;;) {
        const p = { x: 8000 * random(), y: 6500 * random() };
        if (holds(free, p)) return p;
      }
    };
    for (let i = 0; i < 4; i++) {
      const [from, to] = [place(), place()];
      const answer = wayBetween(scene, from, to, { body: BODY });
      const walk = answer.isTold ? answer.walk : undefined;
      const other = shortest(free, from, to);
      const name = `seed ${seed}, pair ${i}: ${walk} against ${other}`;
      if (other === null) expect(walk, name).toBeNull();
      else expect(Math.abs((walk ?? -1) - other), name).toBeLessThan(WITHIN);
    }
  });
});
