import { applyEdits } from '../findings/applyEdits.ts';
import { type Fix, labelWith } from '../findings/edit.ts';
import type { Finding } from '../findings/finding.ts';
import { rules } from '../rules/registry.ts';
import type { Rule } from '../rules/rule.ts';
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
/** Rules that trays can trip (seats are no trays, and counting them asks how many mats lie), and those that pieces can, without the dear ones: what a fix brings by these is told with it. */
const besideTrays = rules.filter(({ id }) => /^(reach|order|steady)\//.test(id) && id !== 'reach/seat');
const besidePieces = rules.filter(({ id, tier }) => tier === 'live' || ['steady/tip', 'survey/turned', 'survey/outside'].includes(id));

/**
 * Pieces looked at, over all fixes tried: some dozens of fixes in a usual room, two in one of four hundred pieces. In a
 * room with more of them than that the rest is not proposed until the first are done. Counted: the same on every device.
 */
const MOST_PIECES = 900;

/**
 * The findings with only those fixes that hold: done, the finding is gone and no must has come that was not there. What
 * else one brings that was not there, a should or a note, stands in its label. Told in slices, one fix tried in each.
 * @param findings of all of the rules that were run, so that what was there before is known
 * @param trial its own analysis, so that what one fix leaves as it is is not worked out again for the next
 */
export function* soundFixes(
  findings: readonly Finding[],
  classroom: Classroom,
  arrangement: string,
  trial = new RunningAnalysis(false),
  asked: readonly Rule[] = rules,
): Generator<void, readonly Finding[]> {
  const proposed = findings.filter(({ fix }) => fix !== undefined);
  if (proposed.length === 0) return findings;
  const before = keysOf(mustsOf(trial.moveTo(classroom, arrangement)));
  const pieces = classroom.arrangements.find(({ id }) => id === arrangement)?.pieces.length ?? 0;
  let left = MOST_PIECES;
  const unsound = new Set<Finding>();
  const labels = new Map<Finding, string>();
  const there = keysOf(findings);
  const ran = new Set(asked);
  for (const finding of gravestFirst(proposed)) {
    const cost = Math.max(1, finding.fix?.edits.some(movesThings) ? pieces : pieces / 10);
    left -= cost;
    const moment = left < 0 ? null : holding(finding, classroom, arrangement, trial, before);
    if (!moment) unsound.add(finding);
    else if (finding.fix) {
      const brings = broughtBy(finding.fix, moment, there, ran);
      if (brings.length > 0) labels.set(finding, labelWith(finding.fix.label, brings));
    }
    yield;
  }
  if (unsound.size === 0 && labels.size === 0) return findings;
  return findings.map((finding) => {
    if (unsound.has(finding)) return withoutFix(finding);
    const label = labels.get(finding);
    return label !== undefined && finding.fix ? { ...finding, fix: { ...finding.fix, label } } : finding;
  });
}

/** "a note: two hands want 0.05 m." for each finding that was not there. */
function broughtBy(fix: Fix, moment: AnalysedMoment, there: ReadonlySet<string>, ran: ReadonlySet<Rule>): string[] {
  const beside = fix.edits.some(movesThings) ? besidePieces : besideTrays;
  return beside
    .filter((rule) => ran.has(rule))
    .flatMap((rule) => moment.judge(rule).findings.filter(({ key, outcome }) => outcome === 'problem' && !there.has(key)))
    .map(({ severity, message }) => `a ${severity}: ${message}`);
}

const movesThings = ({ do: kind }: Fix['edits'][number]): boolean => kind.startsWith('move-') || kind === 'change-piece';

/** The classroom with the fix done; null: it does not hold. */
function holding(
  finding: Finding,
  classroom: Classroom,
  arrangement: string,
  trial: RunningAnalysis,
  before: ReadonlySet<string>,
): AnalysedMoment | null {
  if (!finding.fix) return null;
  const moment = trial.moveTo(applyEdits(classroom, arrangement, finding.fix.edits), arrangement);
  const rule = rules.find(({ id }) => id === finding.rule);
  if (!rule || moment.judge(rule).findings.some(({ key }) => key === finding.key)) return null;
  return mustsOf(moment).every(({ key }) => before.has(key)) ? moment : null;
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
