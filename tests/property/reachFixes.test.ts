import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { judgeRule } from '#model/analysis/report.ts';
import { applyEdits } from '#model/findings/applyEdits.ts';
import { measuresOf } from '#model/measures/measures.ts';
import { see } from '#model/rules/reach/see.ts';
import { take } from '#model/rules/reach/take.ts';
import { buildScene } from '#model/scene/build.ts';
import type { SceneTray } from '#model/scene/types.ts';
import type { Classroom } from '#model/schema/types.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';

const size = (min: number, max: number) => fc.integer({ min: min / 10, max: max / 10 }).map((n) => n * 10);
const maybe = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { freq: 12, nil: null });

const level = fc.record({ surface: size(20, 1100), clear: maybe(size(60, 300)), setBack: fc.constantFrom(0, 0, 40) });
const thing = fc.record({
  width: maybe(size(80, 500)),
  depth: maybe(size(60, 420)),
  height: maybe(size(20, 260)),
  fromMonths: maybe(fc.constantFrom(36, 48, 60)),
  board: fc.nat(3),
  back: fc.boolean(),
  x: size(0, 900),
  y: fc.constantFrom(0, 0, 0, 60, 140),
});
const room = fc
  .record({
    levels: fc.array(level, { minLength: 1, maxLength: 4 }),
    things: fc.array(thing, { minLength: 1, maxLength: 7 }),
    depth: size(250, 500),
    height: size(300, 1200),
    isOpenBehind: fc.boolean(),
    y: size(400, 4700),
    toeRecess: fc.constantFrom(0, 0, 50),
    months: fc.constantFrom(30, 36, 60),
  })
  .map(({ levels, things, depth, height, isOpenBehind, y, toeRecess, months }): Classroom => {
    const boards = levels.map((one, i) => ({ id: `l${i}`, ...one }));
    return plainRoom({
      children: { groups: [{ id: 'g1', fromMonths: months, toMonths: months + 24, count: 8 }] },
      pieces: [
        {
          id: 's1',
          kind: 'shelf',
          x: 3000,
          y,
          width: 1200,
          depth,
          height,
          toeRecess,
          levels: boards,
          sides: isOpenBehind ? ['front', 'back'] : ['front'],
        },
        { id: 'x1', kind: 'other', x: 3200, y: 2600, width: 900, depth: 300 },
      ],
      materials: things.map(({ width, depth: deep, height: high, fromMonths }, i) => ({
        id: `m${i}`,
        name: `thing ${i}`,
        width,
        depth: deep,
        height: high,
        fromMonths,
      })),
      placements: things.map(({ board, back, x, y: behind }, i) => ({
        material: `m${i}`,
        piece: 's1',
        side: back && isOpenBehind ? ('back' as const) : ('front' as const),
        level: boards[board]?.id ?? null,
        x,
        y: behind,
      })),
    });
  });

const judge = (classroom: Classroom) => {
  const scene = buildScene(classroom);
  const measures = measuresOf(scene);
  return [take, see].flatMap((rule) => judgeRule(rule, scene, measures).findings).filter((f) => f.outcome === 'problem');
};

/** Faults of trays on their boards: over one another, over the edge, too tall. */
function faults(classroom: Classroom): Set<string> {
  const found = new Set<string>();
  const overlap = (p: SceneTray, q: SceneTray): boolean => {
    const [pw, pd, qw, qd] = [p.width ?? 0, p.depth ?? 0, q.width ?? 0, q.depth ?? 0];
    const [a, b] = [p.placement, q.placement];
    return a.x < b.x + qw && b.x < a.x + pw && a.y < b.y + qd && b.y < a.y + pd;
  };
  for (const { boards } of buildScene(classroom).sides) {
    for (const { trays, width, depth, clear } of boards) {
      for (const tray of trays) {
        const { id } = tray.material;
        if (tray.placement.x + (tray.width ?? 0) > width) found.add(`${id} over the end`);
        if (tray.placement.y + (tray.depth ?? 0) > depth) found.add(`${id} over the edge`);
        if (clear !== null && (tray.height ?? 0) > clear) found.add(`${id} too tall`);
        for (const other of trays) if (other !== tray && overlap(tray, other)) found.add([id, other.material.id].sort().join(' on '));
      }
    }
  }
  return found;
}

describe('a fix for reach', () => {
  it('removes its finding, makes no other and puts nothing over another', () => {
    let fixes = 0;
    fc.assert(
      fc.property(room, (classroom) => {
        const before = judge(classroom);
        const faultsBefore = faults(classroom);
        for (const finding of before) {
          if (!finding.fix) continue;
          fixes++;
          const mended = applyEdits(classroom, 'a1', finding.fix.edits);
          const after = judge(mended);
          const keys = new Set(before.map((f) => f.key));
          expect(after.map((f) => f.key)).not.toContain(finding.key);
          expect(after.filter((f) => !keys.has(f.key))).toEqual([]);
          expect([...faults(mended)].filter((fault) => !faultsBefore.has(fault))).toEqual([]);
        }
      }),
      { numRuns: 1500, seed: 20261125 },
    );
    expect(fixes).toBeGreaterThan(300);
  });
});
