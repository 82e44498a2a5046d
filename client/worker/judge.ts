import { leftPart } from '#model/analysis/leftStates.ts';
import type { Report } from '#model/analysis/report.ts';
import { RunningAnalysis } from '#model/analysis/running.ts';
import { soundFixes } from '#model/analysis/soundFixes.ts';
import { applyEdits } from '#model/findings/applyEdits.ts';
import type { Finding, Outcome } from '#model/findings/finding.ts';
import type { Mats } from '#model/measures/mats.ts';
import { rules as allRules } from '#model/rules/registry.ts';
import type { Rule, Tier } from '#model/rules/rule.ts';
import type { Classroom } from '#model/schema/types.ts';
import type { Preview } from '../session/types.ts';
import { asideOf } from './asideOf.ts';
import type { Answer, Work } from './messages.ts';
import { sayError } from './sayError.ts';

const tiersOf: Readonly<Record<Work, readonly Tier[]>> = {
  live: ['live'],
  settle: ['live', 'settle'],
};

/** The classroom as it would be with the thing that is being dragged. */
export function withPreview(classroom: Classroom, arrangement: string, preview: Preview | null): Classroom {
  if (!preview) return classroom;
  const { piece, x, y, rotation } = preview;
  return applyEdits(classroom, arrangement, [{ do: 'move-piece', piece, x, y, rotation }]);
}

/**
 * Judges one moment of a classroom, pausing after each rule so that a newer question can take its place. A rule or a
 * measure that breaks is told in words and answered "cannot tell"; the others go on.
 * @param mats what a proof found of the mats; null: nothing
 * @param running follows the classroom from question to question: what a change does not touch is not judged again
 */
export function* judging(
  classroom: Classroom,
  arrangement: string,
  work: Work,
  running: RunningAnalysis,
  mats: Mats | null = null,
  rules: readonly Rule[] = allRules,
): Generator<void, Omit<Answer, 'sequence'>> {
  const moment = running.moveTo(classroom, arrangement, mats ? { mats } : {});
  const answers: Record<string, Outcome> = {};
  const findings: Finding[] = [];
  const troubles: string[] = [];
  for (const rule of rules) {
    if (!tiersOf[work].includes(rule.tier)) continue;
    try {
      const judged = moment.judge(rule);
      answers[rule.id] = judged.answer;
      for (const finding of judged.findings) findings.push(finding);
    } catch (error) {
      answers[rule.id] = 'cannot-tell';
      troubles.push(`"${rule.asks}" could not be worked out (${sayError(error)}). The other checks stand.`);
    }
    yield;
  }
  let figures: Report['measures'] = {};
  try {
    figures = moment.figures(work === 'live' ? 'live' : 'all');
  } catch (error) {
    troubles.push(`The figures beside the drawing could not be worked out (${sayError(error)}).`);
  }
  yield;
  // A drag cannot wait for every fix to be tried.
  const sound = work === 'live' ? findings : yield* tried(findings, classroom, moment.scene.arrangement.id, trialOf(running), troubles);
  const report: Report = {
    format: 'lowshelf.report',
    version: 1,
    classroom: classroom.name,
    arrangement: moment.scene.arrangement.id,
    answers,
    findings: sound,
    measures: figures,
    ...leftPart(classroom, { arrangement: moment.scene.arrangement.id, answers, findings: sound }),
  };
  return { work, report, aside: work === 'live' ? null : asideOf(moment.measures, troubles), troubles };
}

/** Only fixes that hold; where that cannot be found out none, and `troubles` says so. */
function* tried(
  findings: readonly Finding[],
  classroom: Classroom,
  arrangement: string,
  trial: RunningAnalysis,
  troubles: string[],
): Generator<void, readonly Finding[]> {
  try {
    return yield* soundFixes(findings, classroom, arrangement, trial);
  } catch (error) {
    troubles.push(`What the checks propose could not be tried out (${sayError(error)}), so nothing is proposed.`);
    return findings.map(({ fix: _, ...finding }) => finding);
  }
}

const trials = new WeakMap<RunningAnalysis, RunningAnalysis>();

/** What is tried out follows the classroom as well, beside the analysis whose answers are shown. */
function trialOf(running: RunningAnalysis): RunningAnalysis {
  const known = trials.get(running) ?? new RunningAnalysis(false);
  trials.set(running, known);
  return known;
}
