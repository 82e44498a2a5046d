import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { RunningAnalysis } from '#model/analysis/running.ts';
import { mustRules, mustsOf, soundFixes } from '#model/analysis/soundFixes.ts';
import { applyEdits } from '#model/findings/applyEdits.ts';
import type { Finding } from '#model/findings/finding.ts';
import { rules } from '#model/rules/registry.ts';
import type { Classroom } from '#model/schema/types.ts';
import { looseRoom, randomRoom, trayRoom } from '#tests/support/randomRoom.ts';
import { patience, runs } from '#tests/support/runs.ts';

// Random rooms, our own: no source. What is held is what "Do it" promises: the finding goes, and no must comes.
const folder = resolve(import.meta.dirname, '../../shared-model/rules');
const sourceOf = (id: string): string => readFileSync(join(folder, `${id}.ts`), 'utf8');
/** Rules whose source puts a fix into a finding. */
const offering = rules.map(({ id }) => id).filter((id) => /\{ fix \}|\bfix: /.test(sourceOf(id)));
const mending = rules.filter(({ id }) => offering.includes(id));
const ROOMS = runs(14, 1500);

const exercised = new Map<string, number>(offering.map((id) => [id, 0]));
const musts = (running: RunningAnalysis, classroom: Classroom): Set<string> =>
  new Set(mustsOf(running.moveTo(classroom, 'a1')).map(({ key }) => key));

/** What would be proposed in a room, by the rules that propose anything. */
function proposed(running: RunningAnalysis, classroom: Classroom): readonly Finding[] {
  const moment = running.moveTo(classroom, 'a1');
  const work = soundFixes(
    mending.flatMap((rule) => moment.judge(rule).findings),
    classroom,
    'a1',
  );
  let step = work.next();
  while (!step.done) step = work.next();
  return step.value.filter(({ fix }) => fix !== undefined);
}

describe.each([
  ['of everything', randomRoom],
  ['of loose shelves', looseRoom],
  ['of trays', trayRoom],
] as const)('a fix in random rooms %s', (_, room) => {
  it(
    'removes its finding and adds no must',
    () => {
      for (let seed = 1; seed <= ROOMS; seed++) {
        const classroom = room(seed);
        // From the start each time: what is tried with an analysis that follows has to hold for one that does not.
        const before = musts(new RunningAnalysis(), classroom);
        for (const { key, rule, fix } of proposed(new RunningAnalysis(), classroom)) {
          const where = `seed ${seed}, ${key}`;
          const mended = applyEdits(classroom, 'a1', fix?.edits ?? []);
          const running = new RunningAnalysis();
          const found = mending.filter(({ id }) => id === rule).flatMap((one) => running.moveTo(mended, 'a1').judge(one).findings);
          expect(
            found.map((finding) => finding.key),
            `${where}: the fix leaves its finding`,
          ).not.toContain(key);
          expect(
            [...musts(running, mended)].filter((must) => !before.has(must)),
            `${where}: the fix adds a must`,
          ).toEqual([]);
          exercised.set(rule, (exercised.get(rule) ?? 0) + 1);
        }
      }
    },
    patience,
  );
});

describe('rules that propose something', () => {
  it('are found in their sources', () => {
    expect(offering).toEqual(expect.arrayContaining(['reach/take', 'order/sequence', 'way/swing', 'steady/tip', 'survey/outside']));
  });
  it('are tried against every rule that can say must', () => {
    const canBeMust = rules
      .map(({ id }) => id)
      .filter((id) => /'must'|severity: (short|bar|worst)\.severity|\.\.\.problem/.test(sourceOf(id)));
    expect(canBeMust.filter((id) => !mustRules.includes(id))).toEqual([]);
    expect(mustRules.filter((id) => !canBeMust.some((other) => other === id))).toEqual([]);
  });
});

afterAll(() => {
  const never = [...exercised].filter(([, times]) => times === 0).map(([id]) => id);
  expect(never, 'no random room made these rules propose anything').toEqual([]);
});
