import type { Finding, Outcome } from '../findings/finding.ts';
import type { Mats } from '../measures/mats.ts';
import { rules } from '../rules/registry.ts';
import type { Rule, Tier } from '../rules/rule.ts';
import type { Classroom } from '../schema/types.ts';
import { type LeftState, leftPart } from './leftStates.ts';
import type { ReportMeasures } from './reportMeasures.ts';
import { RunningAnalysis } from './running.ts';
import { soundFixes } from './soundFixes.ts';

export { judgeRule } from './judgeRule.ts';

/** The report of classroom-format, version 1. */
export interface Report {
  readonly format: 'lowshelf.report';
  readonly version: 1;
  readonly classroom: string;
  readonly arrangement: string;
  readonly answers: Readonly<Record<string, Outcome>>;
  readonly findings: readonly Finding[];
  readonly measures: ReportMeasures;
  /** What was left as it is, and what no longer does anything; absent where only some rules were run. */
  readonly left?: readonly LeftState[];
}

export interface AnalyseOptions {
  readonly arrangement?: string | null;
  /** Only rules of these tiers; absent: all. */
  readonly tiers?: readonly Tier[];
  readonly rules?: readonly Rule[];
  /** The mats, looked for longer than usual. */
  readonly mats?: Mats | null;
}

/**
 * Judges one arrangement of a classroom by every rule. Pure; never throws on a classroom the schema accepts. Fixes are
 * only those that hold (`soundFixes`), but for reports of the live tier alone, which cannot wait for that.
 */
export function analyse(classroom: Classroom, options: AnalyseOptions = {}): Report {
  const report = new RunningAnalysis().analyse(classroom, options);
  if (options.tiers?.every((tier) => tier === 'live')) return report;
  const ran = rules.filter((rule) => rule.id in report.answers);
  const trying = soundFixes(report.findings, classroom, report.arrangement, undefined, ran);
  let step = trying.next();
  while (!step.done) step = trying.next();
  return { ...report, findings: step.value, ...leftPart(classroom, { ...report, findings: step.value }) };
}
