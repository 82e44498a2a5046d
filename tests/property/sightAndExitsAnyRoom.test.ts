import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { judgeRule } from '#model/analysis/report.ts';
import { reportExits } from '#model/measures/exits.ts';
import { measuresOf } from '#model/measures/measures.ts';
import { reportSight } from '#model/measures/sight.ts';
import { rules } from '#model/rules/registry.ts';
import { buildScene } from '#model/scene/build.ts';
import type { Classroom } from '#model/schema/types.ts';
import { anyClassroom } from '../support/anyClassroom.ts';
import { plainRoom } from '../support/plainRoom.ts';
import { randomWayRoom } from '../support/randomWayRoom.ts';

/** Whatever the file holds, sight, exits and wheelchair spaces give an answer: finite figures that fit together, no failure. */
const asked = rules.filter(({ id }) => /^(sight|exit)\/|^way\/(turn|standing|manoeuvre)$/.test(id));

function expectAnswer(name: string, classroom: Classroom): void {
  for (const exitRules of ['us-ibc', 'england-adb'] as const) {
    const given: Classroom = { ...classroom, exitRules, access: { ...classroom.access, required: true } };
    const scene = buildScene(given);
    const measures = measuresOf(scene);
    for (const finding of asked.flatMap((rule) => judgeRule(rule, scene, measures).findings)) {
      expect(finding.message, name).not.toMatch(/NaN|undefined|Infinity|unknown\b/);
      if (finding.at) expect(Number.isFinite(finding.at.x + finding.at.y), `${name}: ${finding.key}`).toBe(true);
      if (finding.rule.startsWith('exit/')) expect(finding.message, name).toMatch(/Your fire authority decides\.$/);
    }
  }
  const measures = measuresOf(buildScene(classroom));
  const sight = reportSight(measures.sight());
  if (sight) {
    expect(sight.hiddenArea, name).toBeGreaterThanOrEqual(0);
    expect(sight.hiddenArea, name).toBeLessThanOrEqual(sight.floorArea + 1e-6);
  }
  for (const { farthest, atMost } of reportExits(measures.exitWalks())) {
    if (farthest === null) expect(atMost, name).toBeNull();
    else expect(atMost, name).toBeGreaterThanOrEqual(farthest);
  }
}

const exit = { id: 'd1', kind: 'door', from: 'c1', offset: 400, width: 900, swing: 'in-left', exit: true } as const;
const openings = [exit];
const piece = (id: string, x: number, y: number, change = {}) =>
  ({ id, kind: 'shelf', x, y, width: 1200, depth: 320, height: 900, ...change }) as const;
const watch = [{ id: 'w1', x: 3000, y: 2000 }];

describe('rooms nobody would draw', () => {
  it.each([
    [
      'pieces in the same place, and on the eye',
      plainRoom({ room: { openings }, watch, pieces: [piece('s1', 3000, 2000), piece('s2', 3000, 2000)] }),
    ],
    [
      'a piece as large as the room',
      plainRoom({ room: { openings }, watch, pieces: [piece('s1', 3000, 2500, { width: 6000, depth: 5000 })] }),
    ],
    [
      'a piece that holds the room',
      plainRoom({ room: { openings }, watch, pieces: [piece('s1', 3000, 2500, { width: 90_000, depth: 90_000 })] }),
    ],
    ['a piece far outside', plainRoom({ room: { openings }, watch, pieces: [piece('s1', 900_000, -900_000)] })],
    ['a speck', plainRoom({ room: { openings }, watch, pieces: [piece('s1', 3000, 1000, { width: 1e-9, depth: 1e-9 })] })],
    ['the eye on the edge of a piece', plainRoom({ room: { openings }, watch, pieces: [piece('s1', 3000, 2160)] })],
    [
      'the eye a hair below the top of a piece',
      plainRoom({ room: { openings }, watch, pieces: [piece('s1', 3000, 2500, { height: 1099.999999 })] }),
    ],
    [
      'the eye at a corner of the walls',
      plainRoom({ room: { openings }, watch: [{ id: 'w1', x: 0, y: 0 }], pieces: [piece('s1', 3000, 2500)] }),
    ],
    [
      'an outline without area',
      plainRoom({
        room: { openings },
        watch,
        pieces: [
          piece('s1', 3000, 2500, {
            outline: [
              [0, 0],
              [100, 0],
              [200, 0],
            ],
          }),
        ],
      }),
    ],
    [
      'an outline that crosses itself',
      plainRoom({
        room: { openings },
        watch,
        pieces: [
          piece('s1', 3000, 2500, {
            outline: [
              [-500, -500],
              [500, 500],
              [500, -500],
              [-500, 500],
            ],
          }),
        ],
      }),
    ],
    [
      'an exit wider than its wall',
      plainRoom({ room: { openings: [{ ...exit, offset: 0, width: 9000 }] }, watch, pieces: [piece('s1', 3000, 2500)] }),
    ],
    [
      'an exit past the end of its wall',
      plainRoom({ room: { openings: [{ ...exit, offset: 7000 }] }, watch, pieces: [piece('s1', 3000, 2500)] }),
    ],
  ])('%s', (name, classroom) => expectAnswer(name, classroom));
});

it('random rooms', { timeout: 120_000 }, () => {
  for (let seed = 8000; seed < 8030; seed++) {
    const classroom = randomWayRoom(seed);
    for (const opening of classroom.room.openings) opening.exit = true;
    const [arrangement] = classroom.arrangements;
    if (arrangement) arrangement.watch = [{ id: 'w1', x: 2000, y: 2000, eye: 1100 }];
    expectAnswer(`seed ${seed}`, classroom);
  }
});

it('any classroom that the schema accepts', { timeout: 120_000 }, () => {
  fc.assert(
    fc.property(anyClassroom, (classroom) => expectAnswer('any', classroom)),
    { numRuns: 60 },
  );
});
