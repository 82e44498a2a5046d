import { type FindingGroup, groupFindings } from '#model/analysis/groupFindings.ts';
import type { Report } from '#model/analysis/report.ts';
import { type Finding, type Outcome, type QuestionId, questions, type Severity } from '#model/findings/finding.ts';

const weight: Readonly<Record<Severity, number>> = { must: 0, should: 1, note: 2 };
export const questionIds = Object.keys(questions) as QuestionId[];

export const questionOf = (rule: string): string => rule.slice(0, rule.indexOf('/'));

/** Problems that nobody left as they are, each thing to mend once. The same list for the same findings. */
export const openGroups = onceFor((findings) => groupFindings(findings.filter((f) => f.outcome === 'problem' && f.leftReason === null)));
/** What could not be told, and nobody left as it is. */
export const unanswered = onceFor((findings) => findings.filter((f) => f.outcome === 'cannot-tell' && f.leftReason === null));
/** What somebody left as it is, each thing once. */
export const leftAsTheyAre = onceFor((findings) => groupFindings(findings.filter((f) => f.leftReason !== null)));

/** Must before should before note; the order of the rules otherwise, so that the list does not jump. */
export const bySeverity = onceFor((findings) => [...findings].sort((p, q) => weight[p.severity] - weight[q.severity]));

/** Reckoned once for one list of findings: many parts of a sheet ask, at each frame of a drag. */
function onceFor<T>(reckon: (findings: readonly Finding[]) => readonly T[]): (report: Pick<Report, 'findings'>) => readonly T[] {
  const known = new WeakMap<readonly Finding[], readonly T[]>();
  return ({ findings }) => {
    const before = known.get(findings);
    if (before) return before;
    const now = reckon(findings);
    known.set(findings, now);
    return now;
  };
}

export interface QuestionState {
  readonly id: QuestionId;
  readonly asks: string;
  readonly problems: readonly FindingGroup[];
  readonly unknown: number;
  /** no-rule: nothing looks at it yet. does-not-apply: nothing here that it looks at. */
  readonly answer: 'problem' | 'cannot-tell' | 'fine' | 'does-not-apply' | 'no-rule';
  /** What each of its checks answered. */
  readonly answers: Readonly<Record<string, Outcome>>;
}

/** The nine questions in the order of the sheet. */
export function questionStates(report: Report): QuestionState[] {
  const groups = [...openGroups(report)].sort((p, q) => weight[p.lead.severity] - weight[q.lead.severity]);
  return questionIds.map((id) => {
    const own = (rule: string) => questionOf(rule) === id;
    const answers = Object.fromEntries(Object.entries(report.answers).filter(([rule]) => own(rule)));
    const problems = groups.filter(({ lead }) => own(lead.rule));
    const unknown = unanswered(report).filter((f) => own(f.rule)).length;
    return { id, asks: questions[id], problems, unknown, answers, answer: answerOf(Object.values(answers), problems.length, unknown) };
  });
}

function answerOf(answers: readonly string[], problems: number, unknown: number): QuestionState['answer'] {
  if (problems > 0) return 'problem';
  if (unknown > 0) return 'cannot-tell';
  if (answers.length === 0) return 'no-rule';
  return answers.every((answer) => answer === 'does-not-apply') ? 'does-not-apply' : 'fine';
}
