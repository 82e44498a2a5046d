import { describe, expect, it } from 'vitest';
import { measuresOf } from '#model/measures/measures.ts';
import { reachLines, sightOf, takeCurve } from '#model/measures/reachLines.ts';
import { reportReach } from '#model/measures/reportReach.ts';
import { buildScene } from '#model/scene/build.ts';
import type { SceneSide } from '#model/scene/types.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';

const shelf = (change: object = {}) => ({
  id: 's1',
  kind: 'shelf' as const,
  x: 3000,
  y: 200,
  width: 1200,
  depth: 300,
  height: 800,
  levels: [
    { id: 'l1', surface: 640 },
    { id: 'l2', surface: 60, clear: 100 },
  ],
  ...change,
});
const front = (change: PlainRoomChange = {}) => {
  const scene = buildScene(plainRoom({ pieces: [shelf()], ...change }));
  return { scene, reach: measuresOf(scene).reach(), side: scene.sides[0] as SceneSide };
};

describe('the lines of a front', () => {
  it('fall with the depth, as worked by hand for a girl of 3.0 years at percentile 5', () => {
    const { reach, side } = front();
    const at = (depth: number) => reachLines(reach, side, depth);
    expect([0, 100, 150].map((d) => Math.round(at(d)?.take ?? 0))).toEqual([912, 855, 801]);
    expect([0, 150].map((d) => Math.round(at(d)?.see ?? 0))).toEqual([751, 711]);
    expect(at(0)?.eye).toBeCloseTo(778.5, 1);
    expect(at(250)?.take).toBeNull();
  });
  it('stand at the middle of the deepest board unless asked', () => {
    const { reach, side } = front();
    expect(reachLines(reach, side)?.depth).toBe(150);
  });
  it('rise where the toes go under the shelf', () => {
    const { reach, side } = front({ pieces: [shelf({ toeRecess: 60 })] });
    const plain = front();
    expect(reachLines(reach, side, 100)?.take).toBeGreaterThan(reachLines(plain.reach, plain.side, 100)?.take ?? Infinity);
    expect(reachLines(reach, side, 100)?.see).toBeGreaterThan(reachLines(plain.reach, plain.side, 100)?.see ?? Infinity);
  });
  it('follow the arm to its end', () => {
    const { reach, side } = front();
    const curve = takeCurve(reach, side, 50);
    expect(curve.map((p) => p.depth)).toEqual([0, 50, 100, 150, 200]);
    expect(curve.map((p) => Math.round(p.take))[4]).toBe(701);
    expect(takeCurve(reach, side, 0)).toEqual([]);
  });
  it('say from where a spot is seen', () => {
    const { reach, side } = front();
    const low = side.boards[1];
    if (!low) throw new Error('no board');
    // 60 + (778.5 - 60)·150/(D + 150) <= 160 from D = 927.7 on.
    expect(sightOf(reach, side, low, 150)?.nearest).toBeCloseTo((718.47 * 150) / 100 - 150, 0);
    expect(sightOf(reach, side, low, 150, 800)).toBeNull();
  });
  it('are not drawn when the smallest child is not known', () => {
    const { reach, side } = front({ children: { groups: [] } });
    expect(reachLines(reach, side)).toBeNull();
    expect(takeCurve(reach, side)).toEqual([]);
  });
});

describe('the report line', () => {
  it('gives the smallest child and the usual depth', () => {
    const line = reportReach(front().reach);
    expect(line).toMatchObject({
      months: 36,
      percentile: 5,
      stature: 875.35,
      shoulder: 660.52,
      eye: 778.47,
      arm: 315.55,
      atDepth: 150,
      carry: 1.16,
    });
    expect(Math.round(line?.highest ?? 0)).toBe(801);
  });
  it('goes by a measured stature, and says so', () => {
    const line = reportReach(
      front({ children: { groups: [{ id: 'g1', fromMonths: 36, toMonths: 48, count: 1 }], smallestStature: 900 } }).reach,
    );
    expect(line).toMatchObject({ stature: 900, measured: true, shoulder: 687.7, eye: 800.4 });
  });
  it('is empty without children', () => {
    expect(reportReach(front({ children: { groups: [] } }).reach)).toBeNull();
  });
});
