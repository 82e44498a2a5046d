import { describe, expect, it } from 'vitest';
import { openGroups } from '#client/checks/sortFindings.ts';
import { shownReports } from '#client/session/shownReport.ts';
import type { Left } from '#model/schema/types.ts';
import { finding, report } from '../checks/finding.ts';

const left: readonly Left[] = [{ key: 'way/width:s1', reason: 'the table moves on Monday', by: 'Ida Brook', at: '2027-01-15T09:34:00Z' }];

describe('the report as it is shown', () => {
  it('is none while it is still that of another arrangement', () => {
    const shown = shownReports();
    expect(shown(report([]), 'a2', [])).toBeNull();
    expect(shown(null, 'a1', [])).toBeNull();
    const own = report([finding()]);
    expect(shown(own, 'a1', [])).toBe(own);
  });

  it('closes what was left before the checks have looked again, and opens it when it is taken up', () => {
    const shown = shownReports();
    const before = report([finding(), finding({ key: 'way/width:s2' })]);
    const now = shown(before, 'a1', left);
    expect(now?.findings[0]?.leftReason).toBe('the table moves on Monday');
    expect(now && openGroups(now).map(({ lead }) => lead.key)).toEqual(['way/width:s2']);
    const looked = report([finding({ leftReason: 'the table moves on Monday' })]);
    expect(shown(looked, 'a1', [])?.findings[0]?.leftReason).toBeNull();
  });

  it('leaves open what has become worse than it was when it was left', () => {
    const worse = report([finding({ measured: { value: 500, unit: 'mm' }, needed: { value: 900, unit: 'mm' } })]);
    const was = { message: '', severity: 'must', measured: 880, needed: 900 } as const;
    const [entry] = left;
    const shown = shownReports()(worse, 'a1', entry ? [{ ...entry, was }] : []);
    expect(shown?.findings[0]?.leftReason).toBeNull();
    const asBad = shownReports()(worse, 'a1', entry ? [{ ...entry, was: { ...was, measured: 500 } }] : []);
    expect(asBad?.findings[0]?.leftReason).toBe('the table moves on Monday');
  });

  it('is the same object for the same report, and the same list for the same findings', () => {
    const shown = shownReports();
    const before = report([finding()]);
    const first = shown(before, 'a1', left);
    expect(shown(before, 'a1', left)).toBe(first);
    const next = shown({ ...before, measures: {} }, 'a1', left);
    expect(next?.findings).toBe(first?.findings);
  });
});
