import { applyEdits } from '../findings/applyEdits.ts';
import type { Finding } from '../findings/finding.ts';
import { rules } from '../rules/registry.ts';
import type { Classroom } from '../schema/types.ts';
import { type AnalysedMoment, RunningAnalysis } from './running.ts';

/** Rules that can say must: a fix is tried against these. A test holds that no other rule can. */
export const mustRules: readonly string[] = [
  'way/width',
  'way/narrow',
  'way/door',
  'way/swing',
  'reach/take',
  'places/area',
  'places/adults',
  'exit/blocked',
  'steady/overlap',
  'steady/small',
  'survey/outside',
];
const judging = rules.filter(({ id }) => mustRules.includes(id));

/**
 * Pieces looked at, over all fixes tried: some dozens of fixes in a usual room, two in one of four hundred pieces. In a
 * room with more of them than that the rest is not proposed until the first are done. Counted: the same on every device.
 */
const MOST_PIECES = 900;

/**
 * The findings with only those fixes that hold: done, the finding is gone and no must has come that was not there.
 * Told in slices, one fix tried in each.
 * @param trial its own analysis, so that what one fix leaves as it is is not worked out again for the next
 */
export function* soundFixes(
  findings: readonly Finding[],
  classroom: Classroom,
  arrangement: string,
  trial = new RunningAnalysis(),
): Generator<void, readonly Finding[]> {
  const proposed = findings.filter(({ fix }) => fix !== undefined);
  if (proposed.length === 0) return findings;
  const before = keysOf(mustsOf(trial.moveTo(classroom, arrangement)));
  const pieces = classroom.arrangements.find(({ id }) => id === arrangement)?.pieces.length ?? 0;
  let left = MOST_PIECES;
  const unsound = new Set<Finding>();
  for (const finding of gravestFirst(proposed)) {
    const cost = Math.max(1, finding.fix?.edits.some(movesThings) ? pieces : pieces / 10);
    left -= cost;
    if (left < 0 || !holds(finding, classroom, arrangement, trial, before)) unsound.add(finding);
    yield;
  }
  return unsound.size === 0 ? findings : findings.map((finding) => (unsound.has(finding) ? withoutFix(finding) : finding));
}

const movesThings = ({ do: kind }: NonNullable<Finding['fix']>['edits'][number]): boolean =>
  kind.startsWith('move-') || kind === 'change-piece';

function holds(finding: Finding, classroom: Classroom, arrangement: string, trial: RunningAnalysis, before: ReadonlySet<string>): boolean {
  if (!finding.fix) return true;
  const moment = trial.moveTo(applyEdits(classroom, arrangement, finding.fix.edits), arrangement);
  const rule = rules.find(({ id }) => id === finding.rule);
  if (!rule || moment.judge(rule).findings.some(({ key }) => key === finding.key)) return false;
  return mustsOf(moment).every(({ key }) => before.has(key));
}

/** Every must of a moment, whether a problem or not to be told. */
export const mustsOf = (moment: AnalysedMoment): Finding[] =>
  judging.flatMap((rule) => moment.judge(rule).findings.filter(({ severity }) => severity === 'must'));

const keysOf = (findings: readonly Finding[]): Set<string> => new Set(findings.map(({ key }) => key));

const ranks = { must: 0, should: 1, note: 2 } as const;
const gravestFirst = (findings: readonly Finding[]): Finding[] => [...findings].sort((p, q) => ranks[p.severity] - ranks[q.severity]);

function withoutFix({ fix: _, ...finding }: Finding): Finding {
  return finding;
}
