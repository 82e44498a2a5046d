import type { Finding } from '../findings/finding.ts';
import { rules } from '../rules/registry.ts';
import type { Classroom, Left } from '../schema/types.ts';
import type { Report } from './report.ts';
import { RunningAnalysis } from './running.ts';

/** A finding left as it is, and whether the checks still find it. */
export interface LeftState extends Pick<Left, 'key' | 'reason' | 'by' | 'at'> {
  /**
   * here: in this arrangement; worse: here too, but worse than when it was left, so it is open again; elsewhere: only in
   * another; nothing: nowhere, so it may be taken away.
   */
  readonly does: 'here' | 'worse' | 'elsewhere' | 'nothing';
}

/**
 * What became of everything that was left as it is, in the order of the file. Other arrangements are only asked about
 * what this one does not find.
 * @param findings of every rule, in one arrangement
 */
export function leftStates(classroom: Classroom, arrangement: string, findings: readonly Finding[]): LeftState[] {
  const here = new Map(findings.map(({ key, leftReason }) => [key, leftReason === null ? ('worse' as const) : ('here' as const)]));
  const missing = classroom.left.filter(({ key }) => !here.has(key));
  const elsewhere = new Set<string>();
  if (missing.length > 0) {
    const others = classroom.arrangements.filter(({ id }) => id !== arrangement);
    for (const { id } of others) for (const key of keysFoundIn(classroom, id, missing)) elsewhere.add(key);
  }
  return classroom.left.map(({ key, reason, by, at }) => ({
    key,
    reason,
    by,
    at,
    does: here.get(key) ?? (elsewhere.has(key) ? 'elsewhere' : 'nothing'),
  }));
}

function keysFoundIn(classroom: Classroom, arrangement: string, entries: readonly Left[]): string[] {
  const asked = rules.filter(({ id }) => entries.some(({ key }) => key.startsWith(`${id}:`)));
  if (asked.length === 0) return [];
  const moment = new RunningAnalysis().moveTo(classroom, arrangement);
  return asked.flatMap((rule) => moment.judge(rule).findings.map(({ key }) => key));
}

/** The report's part of it; nothing where not every rule was run, and so not everything could be found. */
export function leftPart(
  classroom: Classroom,
  { arrangement, answers, findings }: Pick<Report, 'arrangement' | 'answers' | 'findings'>,
): Pick<Report, 'left'> {
  return rules.every(({ id }) => id in answers) ? { left: leftStates(classroom, arrangement, findings) } : {};
}
