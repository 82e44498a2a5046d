import { describe, expect, it } from 'vitest';
import { type FloorMesh, meshOf, triangleAt } from '#model/geometry/floorMesh.ts';
import type { Region } from '#model/geometry/region.ts';
import type { Point } from '#model/geometry/vec.ts';

const region = (...rings: readonly (readonly (readonly [number, number])[])[]): Region =>
  rings.map((ring) => ring.map(([x, y]) => ({ x, y })));

const square = region([
  [0, 0],
  [6000, 0],
  [6000, 5000],
  [0, 5000],
]);

/** mm² of all triangles, each run clockwise on the plan. */
function covered({ points, corners }: FloorMesh): number {
  let twice = 0;
  for (let t = 0; 3 * t < corners.length; t++) {
    const [a, b, c] = [0, 1, 2].map((k) => points[corners[3 * t + k] as number] as Point) as [Point, Point, Point];
    const turn = (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
    expect(turn).toBeGreaterThan(0);
    twice += turn;
  }
  return twice / 2;
}

/** How many sides have nothing across. */
const edgeSides = ({ across }: FloorMesh): number => across.filter((beyond) => beyond < 0).length;

function expectCornerToCorner({ corners, across }: FloorMesh): void {
  across.forEach((beyond, k) => {
    if (beyond < 0) return;
    const [from, to] = [corners[k], corners[3 * Math.floor(k / 3) + ((k + 1) % 3)]];
    const back = [0, 1, 2].find((i) => corners[3 * beyond + i] === to && corners[3 * beyond + ((i + 1) % 3)] === from);
    expect(back).toBeDefined();
    expect(across[3 * beyond + (back as number)]).toBe(Math.floor(k / 3));
  });
}

/** Every way of cutting up a polygon of n corners with h holes has n + 2h - 2 triangles: de Berg and others, Computational Geometry, chapter 3 (from memory). */
const triangles = (n: number, holes: number): number => n + 2 * holes - 2;

describe('floor cut into triangles', () => {
  it.each([
    ['a room', square, 4, 0, 30e6],
    [
      'a room with a block in it',
      [
        ...square,
        ...region([
          [1000, 1000],
          [1000, 2000],
          [2000, 2000],
          [2000, 1000],
        ]),
      ],
      8,
      1,
      29e6,
    ],
    [
      // Seed 205054 of the absurd classrooms: another library never ended on it.
      'a kilometre of floor with a narrow way and a block a hair from its end',
      region(
        [
          [4900, 5700],
          [1_000_000, 1_000_000],
          [692.459, 1891.628],
          [692.813, 1891.275],
          [692.106, 1890.569],
          [691.752, 1890.922],
          [686.98, 1886.156],
          [714.508, 1856.181],
        ],
        [
          [713.772, 1855.504],
          [686.272, 1885.448],
          [0, 1200],
        ],
      ),
      11,
      null,
      null,
    ],
  ] as const)('%s', (_, floor, corners, holes, area) => {
    const mesh = meshOf(floor) as FloorMesh;
    expect(mesh).not.toBeNull();
    expect(mesh.points).toHaveLength(corners);
    expectCornerToCorner(mesh);
    expect(edgeSides(mesh)).toBe(corners);
    if (area !== null) expect(covered(mesh)).toBeCloseTo(area, 3);
    // Two outlines, else one with holes.
    expect(mesh.corners.length / 3).toBe(holes === null ? triangles(8, 0) + triangles(3, 0) : triangles(corners, holes));
  });

  it('meets corner to corner where corners lie in one line', () => {
    // Seed 900960 of the absurd classrooms: cut up as it lies, a corner comes to stand in the middle of a side.
    const floor = region(
      [
        [6000, 1999.5],
        [2000, 1999.5],
        [2000, 2200.5],
        [5999.5, 2200.5],
        [6000, 2200.5],
        [6000, 5000],
        [0, 5000],
        [0, 1776.353],
        [0.5, 1776.353],
        [0.5, 1775.837],
        [1180.605, 1741.471],
        [1100, 900],
        [0, 978.006],
        [0, 0],
        [6000, 0],
      ],
      [
        [4150, 900],
        [4150, 1300],
        [4450, 1300],
        [4450, 900],
      ],
    );
    const mesh = meshOf(floor) as FloorMesh;
    expectCornerToCorner(mesh);
    expect(edgeSides(mesh)).toBe(19);
    expect(mesh.corners.length / 3).toBe(triangles(19, 1));
  });

  it('tells the triangle a place lies in, and that it lies in none', () => {
    const mesh = meshOf(square) as FloorMesh;
    const at = triangleAt(mesh, { x: 5000, y: 1000 });
    expect(at).toBeGreaterThanOrEqual(0);
    expect(triangleAt(mesh, { x: 1000, y: 4000 })).not.toBe(at);
    expect(triangleAt(mesh, { x: 6001, y: 1000 })).toBe(-1);
  });

  it('is nothing where there is no floor', () => {
    expect(meshOf([])).toBeNull();
  });
});
