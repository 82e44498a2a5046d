import { describe, expect, it } from 'vitest';
import { shareFindings } from '#client/worker/shareFindings.ts';
import { finding } from '../checks/finding.ts';

const copy = <T>(value: T): T => structuredClone(value);

describe('findings that come again from the worker', () => {
  const before = [
    finding({ key: 'a', measured: { value: 600, unit: 'mm' }, at: { x: 1, y: 2 } }),
    finding({ key: 'b', fix: { label: 'Move it', edits: [] } }),
  ];

  it('are the same list when nothing changed', () => {
    expect(shareFindings(before, copy(before))).toBe(before);
  });

  it.each([
    { measured: { value: 601, unit: 'mm' } },
    { at: { x: 1, y: 3 } },
    { message: 'another' },
    { leftReason: 'agreed' },
    { subjects: ['s9'] },
    { trays: ['m9'] },
    { fix: { label: 'Move it there', edits: [] } },
  ] as const)('keep what stayed and take what changed: %j', (change) => {
    const now = [{ ...copy(before[0]), ...change } as (typeof before)[0], copy(before[1]) as (typeof before)[0]];
    const shared = shareFindings(before, now);
    expect(shared[0]).toBe(now[0]);
    expect(shared[1]).toBe(before[1]);
  });

  it('come in their new order, less those that are gone', () => {
    expect(shareFindings(before, copy([...before].reverse()))).toEqual([before[1], before[0]]);
    expect(shareFindings(before, copy(before.slice(1)))).toEqual([before[1]]);
  });
});
