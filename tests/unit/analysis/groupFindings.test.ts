import { describe, expect, it } from 'vitest';
import { leftGroups } from '#client/checks/leftGroups.ts';
import { groupFindings } from '#model/analysis/groupFindings.ts';
import { finding } from '../client/checks/finding.ts';

const pinch = (key: string, x: number, value = 700) =>
  finding({ key, subjects: [key], at: { x, y: 1000 }, measured: { value, unit: 'mm' } });

describe('one thing to mend stands in the list once', () => {
  it('gathers the ways that one pinch narrows', () => {
    const groups = groupFindings([pinch('s1', 500), pinch('s2', 505), pinch('s3', 900)]);
    expect(groups.map(({ lead, others }) => [lead.key, others.map((o) => o.key)])).toEqual([
      ['s1', ['s2']],
      ['s3', []],
    ]);
  });

  it('keeps apart what differs in figure, severity, rule or fix', () => {
    const first = pinch('s1', 500);
    const apart = [
      pinch('s2', 500, 800),
      { ...pinch('s3', 500), severity: 'should' as const },
      { ...pinch('s4', 500), rule: 'way/narrow' },
      { ...pinch('s5', 500), fix: { label: 'move it', edits: [] } },
      finding({ key: 's6' }),
    ];
    expect(groupFindings([first, ...apart])).toHaveLength(6);
  });

  it('puts a narrow place before the ways that it narrows, as one thing with them', () => {
    const way = (key: string) => ({ ...pinch(key, 500), rule: 'way/width', messageKey: 'narrow' });
    const place = { ...pinch('place', 500), rule: 'way/narrow', messageKey: 'holds' };
    const detour = { ...pinch('detour', 500), rule: 'way/narrow', messageKey: 'detour' };
    const groups = groupFindings([way('s1'), way('s2'), place, detour, way('s3')]);
    expect(groups.map(({ lead, others }) => [lead.key, others.map((o) => o.key)])).toEqual([
      ['place', ['s1', 's2', 's3']],
      ['detour', []],
    ]);
    const elsewhere = { ...place, at: { x: 700, y: 1000 } };
    expect(groupFindings([way('s1'), elsewhere])).toHaveLength(2);
  });

  it('gathers what was left together, and keeps an entry that finds nothing any more', () => {
    const entry = (key: string) => ({ key, reason: 'later', by: 'MK', at: '2026-11-25' });
    const groups = leftGroups([entry('s1'), entry('s2'), entry('gone')], [pinch('s1', 500), pinch('s2', 500), pinch('s9', 500)]);
    expect(groups.map(({ keys, finding: found }) => [keys, found?.key])).toEqual([
      [['s1', 's2'], 's1'],
      [['gone'], undefined],
    ]);
  });
});
