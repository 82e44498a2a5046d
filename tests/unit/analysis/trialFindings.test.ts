import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { groupFindings } from '#model/analysis/groupFindings.ts';
import { RunningAnalysis } from '#model/analysis/running.ts';
import { judgePromised } from '#model/analysis/trialFindings.ts';
import type { Finding, Severity } from '#model/findings/finding.ts';
import { addPromised } from '#model/measures/addPromised.ts';
import { readClassroom } from '#model/schema/readFile.ts';

const text = readFileSync(resolve(import.meta.dirname, '../../../client/demo/demo-room.json'), 'utf8');
const read = readClassroom(JSON.parse(text));
if (!read.ok) throw new Error('the demo can be read');
const demo = read.classroom;

/** As the list of the checks counts them. */
const counted = (findings: readonly Finding[], severity: Severity): number =>
  groupFindings(findings.filter((f) => f.outcome === 'problem' && f.leftReason === null)).filter(({ lead }) => lead.severity === severity)
    .length;

const today = '2026-11-26';
const arrangement = demo.current ?? '';

describe('a trial judged says what the list of the checks says once she is added', () => {
  const promised = { months: 33, count: 1, from: null };
  const found = judgePromised(demo, arrangement, promised, today);
  const joined = { ...demo, ...addPromised(demo, promised, today, () => ({ id: 'new', name: 'new' })) };
  const lists = [demo, joined].map((classroom) => new RunningAnalysis().analyse(classroom).findings);
  it.each(['must', 'should'] as const)('%s, before and after', (severity) => {
    const [before, after] = lists.map((findings) => counted(findings, severity));
    expect(found[severity]).toMatchObject({ before, after });
  });
  it('by question the differences make up the whole, and each new one is said', () => {
    for (const { before, after, byQuestion, fresh } of [found.must, found.should]) {
      expect(byQuestion.reduce((sum, one) => sum + one.after - one.before, 0)).toBe(after - before);
      expect(fresh.length).toBeGreaterThanOrEqual(after - before);
    }
    // Under three years the small parts rule looks at every tray within reach (16 CFR 1501, ages below 36 months).
    expect(found.must.byQuestion).toContainEqual({ question: 'steady', before: 1, after: expect.any(Number) });
    expect(found.must.fresh.filter((message) => message.includes('children from 33 months on')).length).toBeGreaterThan(0);
  });
  it('on a date the children of that date are judged', () => {
    const enrolment = [{ from: '2027-04-01', groups: [{ fromMonths: 60, toMonths: 72, count: 5 }] }];
    const later = judgePromised({ ...demo, enrolment }, arrangement, { months: 50, count: 1, from: '2027-05-01' }, today);
    expect(later.must.before).toBeLessThan(found.must.before);
    expect(later.must.fresh.some((message) => message.includes('33 months'))).toBe(false);
  });
});
