import { type FindingGroup, groupFindings } from '#model/analysis/groupFindings.ts';
import type { Report } from '#model/analysis/report.ts';
import { type Finding, type QuestionId, questions, type Severity } from '#model/findings/finding.ts';

const weight: Readonly<Record<Severity, number>> = { must: 0, should: 1, note: 2 };
export const questionIds = Object.keys(questions) as QuestionId[];

export const questionOf = (rule: string): string => rule.slice(0, rule.indexOf('/'));

/** Problems that nobody left as they are. */
const openProblems = (report: Report): Finding[] => report.findings.filter((f) => f.outcome === 'problem' && f.leftReason === null);
/** The same, each thing to mend once. */
export const openGroups = (report: Report): FindingGroup[] => groupFindings(openProblems(report));
/** What could not be told, and nobody left as it is. */
export const unanswered = (report: Report): Finding[] =>
  report.findings.filter((f) => f.outcome === 'cannot-tell' && f.leftReason === null);
/** What somebody left as it is, each thing once. */
export const leftAsTheyAre = (report: Report): FindingGroup[] => groupFindings(report.findings.filter((f) => f.leftReason !== null));

/** Must before should before note; the order of the rules otherwise, so that the list does not jump. */
export function bySeverity(findings: readonly Finding[]): Finding[] {
  return [...findings].sort((p, q) => weight[p.severity] - weight[q.severity]);
}

export interface QuestionState {
  readonly id: QuestionId;
  readonly asks: string;
  readonly problems: readonly FindingGroup[];
  readonly unknown: number;
  /** no-rule: nothing looks at it yet. does-not-apply: nothing here that it looks at. */
  readonly answer: 'problem' | 'cannot-tell' | 'fine' | 'does-not-apply' | 'no-rule';
}

/** The nine questions in the order of the sheet. */
export function questionStates(report: Report): QuestionState[] {
  return questionIds.map((id) => {
    const own = (rule: string) => questionOf(rule) === id;
    const answers = Object.entries(report.answers).flatMap(([rule, answer]) => (own(rule) ? [answer] : []));
    const problems = groupFindings(bySeverity(openProblems(report).filter((f) => own(f.rule))));
    const unknown = unanswered(report).filter((f) => own(f.rule)).length;
    return { id, asks: questions[id], problems, unknown, answer: answerOf(answers, problems.length, unknown) };
  });
}

function answerOf(answers: readonly string[], problems: number, unknown: number): QuestionState['answer'] {
  if (problems > 0) return 'problem';
  if (unknown > 0) return 'cannot-tell';
  if (answers.length === 0) return 'no-rule';
  return answers.every((answer) => answer === 'does-not-apply') ? 'does-not-apply' : 'fine';
}
