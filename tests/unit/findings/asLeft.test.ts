import { describe, expect, it } from 'vitest';
import { asLeft, isWorse } from '#model/findings/asLeft.ts';
import type { Finding } from '#model/findings/finding.ts';
import { m2, mm, type Quantity } from '#model/units/quantity.ts';

const finding = (measured: Quantity | undefined, needed: Quantity | undefined, severity: Finding['severity'] = 'must'): Finding => ({
  key: 'places/area:classroom',
  rule: 'places/area',
  messageKey: 'area',
  outcome: 'problem',
  severity,
  subjects: ['classroom'],
  message: '24 children need 55.20 m² of floor.',
  why: '',
  sources: [],
  missing: [],
  leftReason: null,
  ...(measured && { measured }),
  ...(needed && { needed }),
});
const was = asLeft(finding(m2(54.92), m2(55.2)));

describe('a finding that was left as it is', () => {
  it('keeps what it said and its figures', () => {
    expect(was).toEqual({ message: '24 children need 55.20 m² of floor.', severity: 'must', measured: 54.92, needed: 55.2 });
  });

  it('is worse when it falls further short: more children, or another rule', () => {
    expect(isWorse(finding(m2(54.92), m2(44 * 2.3)), was)).toBe(true);
    expect(isWorse(finding(m2(54.92), m2(24 * 3.25)), was)).toBe(true);
  });

  it('is no worse as it was, a little better, or off by a hair', () => {
    expect(isWorse(finding(m2(54.92), m2(55.2)), was)).toBe(false);
    expect(isWorse(finding(m2(55.1), m2(55.2)), was)).toBe(false);
    const way = asLeft(finding(mm(700), mm(711), 'should'));
    expect(isWorse(finding(mm(698), mm(711), 'should'), way)).toBe(false);
    expect(isWorse(finding(mm(690), mm(711), 'should'), way)).toBe(true);
  });

  it('is worse when it is graver, and where two things are to move instead of one', () => {
    expect(isWorse(finding(mm(700), mm(711), 'must'), asLeft(finding(mm(700), mm(711), 'should')))).toBe(true);
    expect(isWorse(finding(mm(700), mm(711), 'note'), asLeft(finding(mm(700), mm(711), 'should')))).toBe(false);
    const one = asLeft(finding({ value: 1, unit: 'materials' }, { value: 0, unit: 'materials' }));
    expect(isWorse(finding({ value: 2, unit: 'materials' }, { value: 0, unit: 'materials' }), one)).toBe(true);
  });

  it('without figures is told by how grave it is alone', () => {
    expect(isWorse(finding(undefined, undefined), asLeft(finding(undefined, undefined)))).toBe(false);
    expect(isWorse(finding(mm(1), mm(2)), asLeft(finding(undefined, undefined)))).toBe(false);
  });
});
