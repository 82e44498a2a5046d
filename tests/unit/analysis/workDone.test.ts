import { describe, expect, it } from 'vitest';
import { RunningAnalysis } from '#model/analysis/running.ts';
import { applyEdits } from '#model/findings/applyEdits.ts';
import { workDone } from '#model/geometry/workDone.ts';
import { accessFigures } from '#model/measures/accessFigures.ts';
import { WaysField } from '#model/measures/waysField.ts';
import { buildScene } from '#model/scene/build.ts';
import type { Classroom } from '#model/schema/types.ts';
import { benchRoom } from '#tests/bench/benchRoom.ts';

type Work = typeof workDone;
const kinds = ['pairs', 'fronts', 'stretches', 'links'] as const;

function workOf(run: () => unknown): Work {
  const before = { ...workDone };
  run();
  return Object.fromEntries(kinds.map((kind) => [kind, workDone[kind] - before[kind]])) as Work;
}

/** Work of the live tier, in counted steps: from the start, and of the frame after the first shelf moved by 10 mm. */
function liveWork(classroom: Classroom): { start: Work; frame: Work } {
  const arrangement = classroom.arrangements[0];
  const shelf = arrangement?.pieces.find((p) => p.kind === 'shelf');
  if (!arrangement || !shelf) throw new Error('no shelf to drag');
  const running = new RunningAnalysis();
  const live = { tiers: ['live'] } as const;
  const start = workOf(() => running.analyse(classroom, live));
  const moved = applyEdits(classroom, arrangement.id, [{ do: 'move-piece', piece: shelf.id, x: shelf.x + 10, y: shelf.y }]);
  return { start, frame: workOf(() => running.analyse(moved, live)) };
}

const [small, large] = [benchRoom('bench-60'), benchRoom('bench-400')];
const work = { small: liveWork(small), large: liveWork(large) };

describe('the work of the live tier', () => {
  it.each(kinds)('grows at most 8 times from 60 pieces to 400: %s', (kind) => {
    expect(work.small.start[kind]).toBeGreaterThan(0);
    // Gaps are closed anew for each set of pinches that may be open at once: 9 in the large room, 2 in the small.
    expect(work.large.start[kind] / work.small.start[kind]).toBeLessThanOrEqual(kind === 'links' ? 9 : 8);
  });

  it('is less than one closest pair for each two pieces by far: only near ones are compared', () => {
    const { parts } = WaysField.of(buildScene(large));
    expect(work.large.start.pairs).toBeLessThan(parts.length * 12);
    expect(accessFigures(buildScene(large)).routeWidth).toBe(915);
  });

  it('of a frame of a drag is that near the piece, however large the room', () => {
    for (const { start, frame } of [work.small, work.large]) {
      expect(frame.pairs).toBeGreaterThan(0);
      expect(frame.pairs).toBeLessThan(120);
      expect(frame.fronts).toBeLessThan(60);
      expect(frame.stretches).toBeLessThan(60);
      expect(frame.links).toBeLessThanOrEqual(start.links * 1.1);
    }
    expect(work.large.frame.pairs).toBeLessThan(work.large.start.pairs / 20);
    expect(work.large.frame.fronts).toBeLessThan(work.large.start.fronts / 10);
    expect(work.large.frame.stretches).toBeLessThan(work.large.start.stretches / 10);
  });
});
