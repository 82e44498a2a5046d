import { isDeepStrictEqual } from 'node:util';
import { describe, expect, it } from 'vitest';
import type { AnalyseOptions, Report } from '#model/analysis/report.ts';
import { RunningAnalysis } from '#model/analysis/running.ts';
import { changed, diceOf, wholeClass } from '#tests/support/randomEdits.ts';
import { patience, runs } from '#tests/support/runs.ts';

const SEQUENCES = runs(30, 1000);
const BATCHES = 10;
const STEPS = 10;

/** One sequence of edits: after each, what an analysis that follows says is what an analysis from the start says. */
function follow(seed: number): void {
  const dice = diceOf(seed);
  const running = new RunningAnalysis();
  let classroom = wholeClass(seed);
  const past = [classroom];
  let report: Report | null = null;
  for (let step = 0; step < STEPS; step++) {
    const arrangement = dice.chance(0.1) ? 'a2' : 'a1';
    // Mats are looked for long, and in tests of their own: here mostly an answer that somebody brings.
    const isAll = step === STEPS - 1 && seed % 4 === 0;
    const brings = dice.chance(0.9) || !isAll ? { mats: null } : {};
    const options: AnalyseOptions = { arrangement, ...(isAll ? brings : { tiers: ['live'] }) };
    report = running.analyse(classroom, options);
    const fromTheStart = new RunningAnalysis().analyse(classroom, options);
    if (!isDeepStrictEqual(report, fromTheStart)) expect(report, `seed ${seed}, step ${step}`).toEqual(fromTheStart);
    // Undo now and then: objects of long ago come back.
    classroom = dice.chance(0.1) ? dice.pick(past) : changed(classroom, arrangement, dice, report);
    past.push(classroom);
  }
}

describe('an analysis that follows the changes', () => {
  it.each(Array.from({ length: BATCHES }, (_, k) => k))(
    `says what one from the start says, in ${SEQUENCES / BATCHES} sequences of ${STEPS} edits, batch %i`,
    (batch) => {
      for (let seed = 1 + batch; seed <= SEQUENCES; seed += BATCHES) follow(seed);
    },
    patience,
  );
});
