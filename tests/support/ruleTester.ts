import { afterAll, describe, expect, it } from 'vitest';
import { judgeRule } from '#model/analysis/report.ts';
import { applyEdits } from '#model/findings/applyEdits.ts';
import type { Finding, Severity } from '#model/findings/finding.ts';
import { measuresOf } from '#model/measures/measures.ts';
import type { Rule } from '#model/rules/rule.ts';
import { buildScene } from '#model/scene/build.ts';
import type { Classroom } from '#model/schema/types.ts';

interface Case {
  readonly name: string;
  readonly classroom: Classroom;
}
interface ExpectedFinding {
  readonly messageKey: string;
  readonly severity?: Severity;
  readonly subjects?: readonly string[];
  /** mm, m² and so on; compared to 0.01 */
  readonly measured?: number;
  readonly needed?: number;
  readonly missing?: readonly string[];
  /** Words that stand in its message. */
  readonly says?: string;
  /** Required when the finding carries a fix: 'gone' when doing it removes the finding. */
  readonly fix?: 'gone';
}
interface FindingCase extends Case {
  readonly findings: readonly ExpectedFinding[];
}
export interface RuleCases {
  readonly fine: readonly Case[];
  readonly problem: readonly FindingCase[];
  /** Empty only with a reason in `neverCannotTell`. */
  readonly cannotTell: readonly FindingCase[];
  readonly neverCannotTell?: string;
  readonly doesNotApply?: readonly Case[];
}

/**
 * Runs a rule's tables of cases. It refuses a case given twice, a fix without an expected result or one that
 * leaves its finding in place, and a message or an option that no case exercises.
 */
export function testRule(rule: Rule, cases: RuleCases): void {
  const saidMessages = new Set<string>();
  const usedOptions = new Set<string>();
  const seenCases = new Set<string>();

  const judge = (classroom: Classroom) => {
    for (const option of Object.keys(classroom.options[rule.id] ?? {})) usedOptions.add(option);
    const scene = buildScene(classroom);
    const judged = judgeRule(rule, scene, measuresOf(scene));
    for (const finding of judged.findings) saidMessages.add(finding.messageKey);
    return judged;
  };
  const once = (entry: Case) => {
    const json = JSON.stringify(entry.classroom);
    expect(seenCases.has(json), `the case "${entry.name}" stands twice`).toBe(false);
    seenCases.add(json);
  };

  describe(rule.id, () => {
    it.each(cases.fine)('fine: $name', (entry) => {
      once(entry);
      const judged = judge(entry.classroom);
      expect(judged.findings).toEqual([]);
      expect(judged.answer).toBe('fine');
    });
    it.each(cases.problem)('problem: $name', (entry) => {
      once(entry);
      const judged = judge(entry.classroom);
      expect(judged.answer).toBe('problem');
      compare(judged.findings, entry.findings);
      checkFixes(entry, judged.findings);
    });
    it.each(cases.cannotTell)('cannot tell: $name', (entry) => {
      once(entry);
      const judged = judge(entry.classroom);
      expect(judged.answer).toBe('cannot-tell');
      compare(judged.findings, entry.findings);
      for (const finding of judged.findings) expect(finding.missing, 'a cannot-tell names what is missing').not.toEqual([]);
    });
    it.each(cases.doesNotApply ?? [])('does not apply: $name', (entry) => {
      once(entry);
      expect(judge(entry.classroom).answer).toBe('does-not-apply');
    });
    it('is tested on every side', () => {
      expect(cases.fine.length).toBeGreaterThan(0);
      expect(cases.problem.length).toBeGreaterThan(0);
      if (cases.neverCannotTell === undefined) expect(cases.cannotTell.length).toBeGreaterThan(0);
    });
    afterAll(() => {
      expect([...saidMessages].sort(), 'messages that no case exercises').toEqual(Object.keys(rule.messages).sort());
      const declared = Object.keys(rule.options.shape);
      expect(
        declared.filter((option) => !usedOptions.has(option)),
        'options that no case sets',
      ).toEqual([]);
    });
  });

  function checkFixes(entry: FindingCase, findings: readonly Finding[]): void {
    findings.forEach((finding, index) => {
      if (!finding.fix) {
        expect(entry.findings[index]?.fix, `${finding.key} has no fix`).toBeUndefined();
        return;
      }
      expect(entry.findings[index]?.fix, `${finding.key} has a fix: say what it does`).toBe('gone');
      expect(finding.fix.edits.length).toBeGreaterThan(0);
      const arrangement = buildScene(entry.classroom).arrangement.id;
      const mended = judge(applyEdits(entry.classroom, arrangement, finding.fix.edits));
      expect(
        mended.findings.map((f) => f.key),
        'the fix leaves its finding in place',
      ).not.toContain(finding.key);
    });
  }
}

function compare(found: readonly Finding[], expected: readonly ExpectedFinding[]): void {
  expect(found.map((f) => f.messageKey)).toEqual(expected.map((e) => e.messageKey));
  expected.forEach((wanted, index) => {
    const finding = found[index] as Finding;
    if (wanted.severity) expect(finding.severity).toBe(wanted.severity);
    if (wanted.subjects) expect(finding.subjects).toEqual(wanted.subjects);
    if (wanted.measured !== undefined) expect(finding.measured?.value).toBeCloseTo(wanted.measured, 2);
    if (wanted.needed !== undefined) expect(finding.needed?.value).toBeCloseTo(wanted.needed, 2);
    if (wanted.says) expect(finding.message).toContain(wanted.says);
    if (wanted.missing) expect(finding.missing).toEqual(wanted.missing);
  });
}
