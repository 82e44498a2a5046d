import { describe, expect, it } from 'vitest';
import { boundingBox } from '#model/geometry/polygon.ts';
import { matFloor, matTurns } from '#model/measures/floor.ts';
import { measureMats, reportMats } from '#model/measures/mats.ts';
import { seatStrips } from '#model/measures/seats.ts';
import { buildScene } from '#model/scene/build.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';

const sceneOf = (change: PlainRoomChange = {}) => buildScene(plainRoom(change));
const boxesOf = (change: PlainRoomChange) => {
  const scene = sceneOf(change);
  // The first four are the walls.
  return matFloor(scene, seatStrips(scene))
    .obstacles.slice(4)
    .map((ring) => boundingBox(ring));
};
const shelf = { id: 's1', kind: 'shelf', x: 3000, y: 160, width: 1200, depth: 320 } as const;

describe('the floor for mats', () => {
  it('leaves out the strip before each open side, not before a closed one', () => {
    expect(boxesOf({ pieces: [shelf] })).toEqual([
      { minX: 2400, maxX: 3600, minY: 0, maxY: 320 },
      { minX: 2400, maxX: 3600, minY: 320, maxY: 920 },
    ]);
    expect(boxesOf({ pieces: [{ ...shelf, closed: true }] })).toHaveLength(1);
    expect(boxesOf({ pieces: [shelf], access: { frontStrip: 0 } })).toHaveLength(1);
  });
  it('leaves out seated children, and seats that are drawn', () => {
    const table = { id: 't1', kind: 'table', x: 3000, y: 2500, width: 1200, depth: 600, seatSides: { front: 2 } } as const;
    expect(boxesOf({ pieces: [table] })[1]).toEqual({ minX: 2400, maxX: 3600, minY: 2800, maxY: 3283 });
    expect(boxesOf({ pieces: [table, { id: 'k1', kind: 'seat', x: 3000, y: 2900, width: 300, depth: 300, table: 't1' }] })).toHaveLength(3);
  });
  it('leaves out a leaf that swings in, and nothing for one that swings out', () => {
    const door = { id: 'd1', kind: 'door', from: 'c1', offset: 400, width: 900 } as const;
    expect(boxesOf({ room: { openings: [{ ...door, swing: 'in-left' }] } })).toHaveLength(1);
    expect(boxesOf({ room: { openings: [{ ...door, swing: 'out-left' }] } })).toHaveLength(0);
  });
  it('takes a rug as floor, and no mat across the edge of a step', () => {
    expect(boxesOf({ pieces: [{ id: 'r1', kind: 'rug', x: 3000, y: 2500, width: 2000, depth: 1500 }] })).toHaveLength(0);
    const step = { id: 'f1', kind: 'step', x: 3000, y: 4000, width: 2000, depth: 1000, walkable: true } as const;
    expect(boxesOf({ room: { fixtures: [step] } })).toHaveLength(4);
  });
});

describe('the turns of mats', () => {
  it('are square to the plan in a plain room', () => expect(matTurns(sceneOf(), 750)).toEqual([0]));
  it('are square to each slanted wall that a mat lies along', () => {
    const corners = [
      { id: 'c1', x: 0, y: 0 },
      { id: 'c2', x: 6000, y: 0 },
      { id: 'c3', x: 6000, y: 3000 },
      { id: 'c4', x: 4000, y: 5000 },
      { id: 'c5', x: 0, y: 5000 },
    ];
    expect(matTurns(sceneOf({ room: { corners } }), 750)).toEqual([0, 45]);
    expect(matTurns(sceneOf({ room: { corners } }), 3000)).toEqual([0]);
  });
  it('leave out what a tape cannot tell from square', () => {
    const corners = [
      { id: 'c1', x: 0, y: 0 },
      { id: 'c2', x: 6000, y: 20 },
      { id: 'c3', x: 6000, y: 5000 },
      { id: 'c4', x: 0, y: 5000 },
    ];
    expect(matTurns(sceneOf({ room: { corners } }), 750)).toEqual([0]);
  });
});

describe('the report of mats', () => {
  it('has the shape of the format, a place for each mat', () => {
    const scene = sceneOf({ floorWork: { mat: { width: 2000, depth: 1000 }, gap: 500 } });
    const report = reportMats(measureMats(scene, [], 'quick'));
    expect(Object.keys(report ?? {})).toEqual(['count', 'upperBound', 'proven', 'places']);
    expect(report?.places).toHaveLength(report?.count ?? -1);
    expect(Object.keys(report?.places[0] ?? {})).toEqual(['x', 'y', 'width', 'depth', 'rotation']);
    expect(report?.places.every((p) => p.width === 2000 && p.depth === 1000)).toBe(true);
  });
  it('is null where the walls do not hold', () => {
    const crossed = [
      { id: 'c1', x: 0, y: 0 },
      { id: 'c2', x: 6000, y: 0 },
      { id: 'c3', x: 0, y: 5000 },
      { id: 'c4', x: 6000, y: 5000 },
    ];
    expect(reportMats(measureMats(sceneOf({ room: { corners: crossed, openings: [] } }), [], 'quick'))).toBeNull();
  });
  it('does not choke on mats the size of a stamp', () => {
    const scene = sceneOf({ floorWork: { mat: { width: 30, depth: 30 }, gap: 0 } });
    const mats = measureMats(scene, [], 'quick');
    expect(mats?.upperBound).toBeGreaterThan(30_000);
    expect(mats?.count).toBeLessThanOrEqual(400);
    expect(mats?.proven).toBe(false);
  });
});
