import { type Finding, type QuestionId, questions, type Severity } from '../findings/finding.ts';
import { addPromised } from '../measures/addPromised.ts';
import { childrenOnDate, type Promised, withPromised } from '../measures/trial.ts';
import type { Classroom } from '../schema/types.ts';
import { groupFindings } from './groupFindings.ts';
import { RunningAnalysis } from './running.ts';

/** Open problems of one weight, each thing to mend once. */
export interface TrialCount {
  readonly before: number;
  readonly after: number;
  /** Where the two differ, in the order of the nine questions. */
  readonly byQuestion: readonly { readonly question: QuestionId; readonly before: number; readonly after: number }[];
  /** Messages of what was not there before, or was less grave. */
  readonly fresh: readonly string[];
}

/** What the checks say of the room once promised children are in the class, against what they say of it without them. */
export interface TrialFindings {
  readonly must: TrialCount;
  readonly should: TrialCount;
}

/**
 * Judges the classroom twice by every rule: with the children of that day, and with the promised ones among them and in
 * the enrolment from then on. Changes nothing. Takes about as long as all checks twice.
 * @param today as 2026-11-26
 */
export function judgePromised(classroom: Classroom, arrangement: string, promised: Promised, today: string): TrialFindings {
  const named = childrenOnDate(classroom, promised.from).groups.map((group, i) => ({ id: `g${i}`, name: '', ...group }));
  const newGroup = { id: 'promised', name: 'promised' };
  const joined = withPromised(named, promised, (group) => ({ ...newGroup, ...group }));
  const { enrolment } = { ...classroom, ...addPromised(classroom, promised, today, () => newGroup) };
  const running = new RunningAnalysis();
  const judge = (groups: Classroom['children']['groups'], year: Classroom['enrolment']): Finding[] =>
    openOf(running.analyse({ ...classroom, enrolment: year, children: { ...classroom.children, groups } }, { arrangement }).findings);
  const was = judge(named, classroom.enrolment);
  const is = judge(joined, enrolment);
  return { must: countOf('must', was, is), should: countOf('should', was, is) };
}

const openOf = (findings: readonly Finding[]): Finding[] =>
  findings.filter(({ outcome, leftReason }) => outcome === 'problem' && leftReason === null);

function countOf(severity: Severity, was: readonly Finding[], is: readonly Finding[]): TrialCount {
  const leads = (findings: readonly Finding[]): Finding[] =>
    groupFindings(findings)
      .map(({ lead }) => lead)
      .filter((lead) => lead.severity === severity);
  const [before, after] = [leads(was), leads(is)];
  const known = new Set(was.filter((finding) => finding.severity === severity).map(({ key }) => key));
  const of = (findings: readonly Finding[], question: QuestionId): number =>
    findings.filter(({ rule }) => rule.startsWith(`${question}/`)).length;
  const ids = Object.keys(questions) as QuestionId[];
  return {
    before: before.length,
    after: after.length,
    byQuestion: ids
      .map((question) => ({ question, before: of(before, question), after: of(after, question) }))
      .filter((one) => one.before !== one.after),
    fresh: after.filter(({ key }) => !known.has(key)).map(({ message }) => message),
  };
}
