import { Clipper, EndType, FillRule, JoinType, type PathD, type PathsD } from 'clipper2-ts';
import { describe, expect, it } from 'vitest';
import { judgeRule } from '#model/analysis/report.ts';
import type { Point } from '#model/geometry/vec.ts';
import { measuresOf } from '#model/measures/measures.ts';
import { seatStrips } from '#model/measures/seats.ts';
import { measureTurning } from '#model/measures/turning.ts';
import { manoeuvre } from '#model/rules/way/manoeuvre.ts';
import { turn } from '#model/rules/way/turn.ts';
import { buildScene } from '#model/scene/build.ts';
import type { Scene } from '#model/scene/types.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';
import { randomWayRoom } from '#tests/support/randomWayRoom.ts';
import { indexRow, workedExample } from '#tests/support/standardsIndex.ts';

/**
 * Spaces for a wheelchair, ADA Standards for Accessible Design, 2010: the turning circle and T (304.3, A05 and A06,
 * worked example W22) and floor at doors (table 404.2.4.1, A10), from the index; the widest disc also against
 * clipper2's offsets, whose arcs are drawn to 0.1 mm.
 */
type Piece = NonNullable<PlainRoomChange['pieces']>[number];
const answer = (rule: typeof turn, change: PlainRoomChange) => {
  const scene = buildScene(plainRoom({ access: { required: true }, ...change }));
  return judgeRule(rule, scene, measuresOf(scene)).answer;
};
const block = (id: string, fromX: number, fromY: number, toX: number, toY: number): Piece => ({
  id,
  kind: 'other',
  x: (fromX + toX) / 2,
  y: (fromY + toY) / 2,
  width: toX - fromX,
  depth: toY - fromY,
});

describe('W22: the T and the circle of one square', () => {
  const { inputs, expected } = workedExample('W22');
  const square = Number(inputs.square_mm);
  const wide = Number(inputs.width_mm);
  const stem = Number(indexRow('A06').values.base_clear_min_mm);
  it('areas', () => {
    expect((Math.PI / 4) * (square / 1000) ** 2).toBeCloseTo(Number(expected.circle_area_m2), 3);
    expect((square * wide + wide * stem) / 1e6).toBeCloseTo(Number(expected.tee_area_m2), 3);
  });
  /** A niche in the north-east corner: the T's own outline, lying on its side towards the west, `by` mm narrower. */
  const niche = (by: number): Piece[] => {
    const arm = wide - by;
    const side = (square - arm) / 2;
    const left = 6000 - square;
    return [
      block('k1', left, 0, left + stem, side),
      block('k2', left, side + arm, left + stem, square),
      block('k3', 0, square, 6000, 5000),
      block('k4', 0, side + arm, left, square),
      block('k5', 1800, 0, left, side),
    ];
  };
  it('a niche of just the T does, a little less does not', () => {
    expect(answer(turn, { pieces: niche(0) })).toBe('fine');
    expect(answer(turn, { pieces: niche(4) })).toBe('problem');
  });
});

describe('A10: each line of the table is enough by itself, and no less is, but for what a latch approach covers', () => {
  const rows = indexRow('A10').values.rows as Record<string, number | string>[];
  it.each(rows.map((row) => [`${row.approach} ${row.side} ${row.depth_mm}`, row] as const))('%s', (_, row) => {
    const swing = row.side === 'pull' ? 'in-left' : 'out-left';
    const openings = [{ id: 'd1', kind: 'door', from: 'c1', offset: 2000, width: 900, clear: 850, swing } as const];
    // The leaf hangs at the west; clear from 2050 to 2900.
    const around = (short: number): Piece[] => [
      block('k1', 0, 0, 2050 - Number(row.beside_hinge_mm ?? 0), 2500),
      block('k2', 2900 + Number(row.beside_latch_mm ?? 0), 0, 6000, 2500),
      block('k3', 0, Number(row.depth_mm) - short, 6000, 2500),
    ];
    expect(answer(manoeuvre, { room: { openings }, pieces: around(0) })).toBe('fine');
    // A hinge approach on the pull side asks for more than a latch approach, which then does.
    const isCovered = row.approach === 'hinge' && row.side === 'pull';
    expect(answer(manoeuvre, { room: { openings }, pieces: around(5) })).toBe(isCovered ? 'fine' : 'problem');
  });
});

const path = (ring: readonly Point[]): PathD => {
  const made = ring.map(({ x, y }) => ({ x, y }));
  return Clipper.areaD(made) < 0 ? made.reverse() : made;
};
/** Where the middle of a disc may be. */
function middles(scene: Scene, diameter: number): PathsD {
  const rings = [...scene.bodies.filter((b) => b.isObstacle).map((b) => b.footprint), ...seatStrips(scene).map((s) => s.strip)];
  const grow = (ring: readonly Point[], by: number): PathsD =>
    Clipper.inflatePathsD([path(ring)], by, JoinType.Round, EndType.Polygon, 2, 4, 0.1);
  return Clipper.differenceD(
    grow(scene.room.outline, -diameter / 2),
    rings.flatMap((ring) => grow(ring, diameter / 2)),
    FillRule.NonZero,
    4,
  );
}

describe('the widest disc against offsets', () => {
  // Not 5107: furniture stands in its only door, so no route leads to any floor.
  it.each(Array.from({ length: 17 }, (_, i) => 5100 + i).filter((seed) => seed !== 5107))('seed %i', (seed) => {
    const classroom = randomWayRoom(seed);
    classroom.access.routeWidth = 1;
    const scene = buildScene(classroom);
    const diameter = measureTurning(scene, Infinity, false)?.disc?.diameter ?? 0;
    const name = `seed ${seed}: ${diameter}`;
    expect(middles(scene, diameter - 0.5).length, name).toBeGreaterThan(0);
    // Floor that no door leads to is left out by the one and not by the other; these rooms have none that is wider.
    expect(middles(scene, diameter + 0.7).length, name).toBe(0);
  });
});
