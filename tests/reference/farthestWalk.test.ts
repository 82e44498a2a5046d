import { describe, expect, it } from 'vitest';
import { meshOf } from '#model/geometry/floorMesh.ts';
import { seededRandom } from '#model/geometry/seededRandom.ts';
import type { Point } from '#model/geometry/vec.ts';
import { WalkField } from '#model/geometry/walkField.ts';
import { walkFloor } from '#model/measures/walkFloor.ts';
import { wayBetween } from '#model/measures/wayBetween.ts';
import { buildScene } from '#model/scene/build.ts';
import { randomWayRoom } from '#tests/support/randomWayRoom.ts';

/**
 * Walks over the floor's triangles, and the farthest of them, against a search over every pair of corners that see
 * each other: the visibility graph of any textbook of computational geometry, by plain tests of crossing segments.
 */
const SEEDS = Array.from({ length: 12 }, (_, i) => 7100 + i);
const MORE = Array.from({ length: 20 }, (_, i) => 7300 + i);
const SAMPLES = 60;
const WITHIN = 0.05;

const side = (a: Point, b: Point, c: Point): number => (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);

type Rings = readonly (readonly Point[])[];

function holds(rings: Rings, p: Point): boolean {
  let isIn = false;
  for (const ring of rings)
    ring.forEach((a, i) => {
      const b = ring[(i + ring.length - 1) % ring.length] as Point;
      if (a.y > p.y !== b.y > p.y && p.x < ((b.x - a.x) * (p.y - a.y)) / (b.y - a.y) + a.x) isIn = !isIn;
    });
  return isIn;
}

function toEdge(rings: Rings, p: Point): number {
  let least = Infinity;
  for (const ring of rings)
    for (const [i, a] of ring.entries()) {
      const b = ring[(i + 1) % ring.length] as Point;
      const square = (b.x - a.x) ** 2 + (b.y - a.y) ** 2;
      const t = square === 0 ? 0 : Math.max(0, Math.min(1, ((p.x - a.x) * (b.x - a.x) + (p.y - a.y) * (b.y - a.y)) / square));
      least = Math.min(least, Math.hypot(a.x + t * (b.x - a.x) - p.x, a.y + t * (b.y - a.y) - p.y));
    }
  return least;
}

/** Between any two meetings with sides of the floor the line runs over floor, or along a side. */
function sees(rings: Rings, p: Point, q: Point): boolean {
  const long = Math.hypot(q.x - p.x, q.y - p.y);
  const meets = [0, 1];
  for (const ring of rings)
    for (const [i, a] of ring.entries()) {
      const b = ring[(i + 1) % ring.length] as Point;
      const s1 = side(p, q, a) / long;
      const s2 = side(p, q, b) / long;
      if ((s1 > 1e-3 && s2 > 1e-3) || (s1 < -1e-3 && s2 < -1e-3)) continue;
      const alongA = ((a.x - p.x) * (q.x - p.x) + (a.y - p.y) * (q.y - p.y)) / long / long;
      const alongB = ((b.x - p.x) * (q.x - p.x) + (b.y - p.y) * (q.y - p.y)) / long / long;
      if (Math.abs(s1 - s2) < 1e-3) meets.push(alongA, alongB);
      else meets.push(alongA + ((alongB - alongA) * s1) / (s1 - s2));
    }
  const inOrder = meets.filter((t) => t >= 0 && t <= 1).sort((s, t) => s - t);
  return inOrder.every((from, i) => {
    const to = inOrder[i + 1] ?? from;
    if ((to - from) * long < 0.02) return true;
    const middle = { x: p.x + ((q.x - p.x) * (from + to)) / 2, y: p.y + ((q.y - p.y) * (from + to)) / 2 };
    return holds(rings, middle) || toEdge(rings, middle) < 2e-3;
  });
}

/** Lengths from a source to every corner and every sample. */
function search(rings: Rings, source: Point, samples: readonly Point[]): number[] {
  const corners = rings.flat();
  const nodes = [source, ...corners];
  const length = nodes.map(() => Infinity);
  const done = nodes.map(() => false);
  length[0] = 0;
  for (;;) {
    let at = -1;
    nodes.forEach((_, i) => {
      if (!done[i] && (length[i] as number) < (at < 0 ? Infinity : (length[at] as number))) at = i;
    });
    if (at < 0) break;
    done[at] = true;
    const p = nodes[at] as Point;
    nodes.forEach((q, i) => {
      const walked = (length[at] as number) + Math.hypot(p.x - q.x, p.y - q.y);
      if (!done[i] && walked < (length[i] as number) && sees(rings, p, q)) length[i] = walked;
    });
  }
  return samples.map((p) =>
    Math.min(...nodes.map((q, i) => (sees(rings, p, q) ? (length[i] as number) + Math.hypot(p.x - q.x, p.y - q.y) : Infinity))),
  );
}

describe('walks over triangles against a visibility graph', () => {
  it.each(SEEDS)('seed %i', (seed) => {
    const scene = buildScene(randomWayRoom(seed));
    const rings = walkFloor(scene);
    const mesh = meshOf(rings);
    if (!mesh) throw new Error(`seed ${seed}: no mesh`);
    const random = seededRandom(seed);
    const xs = scene.room.outline.map((p) => p.x);
    const ys = scene.room.outline.map((p) => p.y);
    const samples: Point[] = [];
    while (samples.length < SAMPLES) {
      const p = { x: Math.max(...xs) * random(), y: Math.max(...ys) * random() };
      if (holds(rings, p)) samples.push(p);
    }
    const source = samples[0] as Point;
    const field = new WalkField(mesh, [source]);
    const far = field.farthest(1);
    if (!far) throw new Error(`seed ${seed}: no farthest place`);
    const lengths = search(rings, source, [...samples, far.at]);
    for (const [i, p] of samples.entries()) {
      const walk = field.lengthTo(p);
      const other = lengths[i] as number;
      const name = `seed ${seed}: to (${p.x}, ${p.y}) ${walk}, by the graph ${other}`;
      if (other === Infinity) expect(walk, name).toBe(Infinity);
      else {
        expect(Math.abs(walk - other), name).toBeLessThan(WITHIN);
        expect(other, `${name}: farther than the farthest`).toBeLessThanOrEqual(far.most + WITHIN);
      }
    }
    expect(Math.abs((lengths[SAMPLES] as number) - far.least), `seed ${seed}: the farthest place`).toBeLessThan(WITHIN);
    expect(far.most - far.least).toBeLessThanOrEqual(1 + 1e-9);
  });
});

it.each([300, 500])('gaps that a body of %i mm does not pass are shut: where it gets to agrees with walks of such a body', (body) => {
  let reached = 0;
  let shut = 0;
  for (const seed of [...SEEDS, ...MORE]) {
    const scene = buildScene(randomWayRoom(seed));
    for (const piece of scene.bodies) if (piece.piece) piece.piece.seatSides = {};
    const mesh = meshOf(walkFloor(scene, body));
    if (!mesh) throw new Error(`seed ${seed}: no mesh`);
    const random = seededRandom(seed + 5);
    const roomy: Point[] = [];
    for (let i = 0; i < 400 && roomy.length < 12; i++) {
      const p = { x: 7000 * random(), y: 5500 * random() };
      const around = wayBetween(scene, p, p);
      if (around.isTold && around.width >= body + 100) roomy.push(p);
    }
    const [source, ...places] = roomy;
    if (!source) continue;
    const field = new WalkField(mesh, [source]);
    for (const p of places) {
      const answer = wayBetween(scene, source, p, { body: body - 1 });
      const canWalk = answer.isTold && answer.walk !== null;
      const name = `seed ${seed}: (${source.x}, ${source.y}) to (${p.x}, ${p.y})`;
      expect(field.lengthTo(p) < Infinity, name).toBe(canWalk);
      if (canWalk) reached++;
      else shut++;
    }
  }
  expect(reached).toBeGreaterThan(100);
  expect(shut).toBeGreaterThan(3);
});
