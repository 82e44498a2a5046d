import { describe, expect, it } from 'vitest';
import { nearDistances } from '#client/plan/nearDistances.ts';
import { buildRoom } from '#model/scene/room.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';

const built = buildRoom(plainRoom().room);
const scene = { outline: built.outline, walls: built.walls, others: [] };
const shelf = { x: 1000, y: 1000, width: 1200, depth: 320, rotation: 0 };
const lengths = (distances: readonly { mm: number }[]) => distances.map((d) => Math.round(d.mm)).sort((p, q) => p - q);

describe('distances to what is near', () => {
  it('measures to walls from the sides, and leaves out what is far', () => {
    // 6 x 5 m: west 1000 - 600, north 1000 - 160; east 4400 and south 3840 are too far to matter.
    expect(lengths(nearDistances(shelf, scene))).toEqual([400, 840]);
  });

  it('measures to a neighbour that stands before only a part of a side', () => {
    const neighbour = { x: 1550, y: 1700, width: 300, depth: 300, rotation: 0 };
    expect(lengths(nearDistances(shelf, { ...scene, others: [neighbour] }))).toContain(390);
  });

  it('follows the turn of the thing', () => {
    expect(lengths(nearDistances({ ...shelf, rotation: 90 }, scene))).toEqual([400, 840]);
  });

  it('says nothing of what it touches', () => {
    expect(lengths(nearDistances({ ...shelf, y: 160 }, scene))).toEqual([400]);
  });
});
