import { describe, expect, it } from 'vitest';
import { leftStates } from '#model/analysis/leftStates.ts';
import { analyse } from '#model/analysis/report.ts';
import { sayLeftState } from '#model/analysis/sayLeftState.ts';
import { asLeft } from '#model/findings/asLeft.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';

const room = plainRoom({
  pieces: [
    { id: 'box1', kind: 'other', x: 2000, y: 2000, width: 800, depth: 800 },
    { id: 'box2', kind: 'other', x: 2500, y: 2000, width: 800, depth: 800 },
  ],
});
const key = 'steady/overlap:box1+box2';
const entry = { key, reason: 'the table moves on Monday', by: 'MK', at: '2026-11-25T09:34:00Z' };

describe('what was left as it is', () => {
  it('stands in the report with its reason as long as the checks find it', () => {
    const report = analyse({ ...room, left: [entry] });
    expect(report.left).toEqual([{ ...entry, does: 'here' }]);
    expect(report.findings.find((finding) => finding.key === key)?.leftReason).toBe(entry.reason);
    expect(sayLeftState({ does: 'here' })).toBeNull();
  });

  it('is said to do nothing once it is mended, or when no check ever said so', () => {
    const [arrangement] = room.arrangements;
    if (!arrangement) throw new Error('the room has an arrangement');
    const mended = { ...room, arrangements: [{ ...arrangement, pieces: arrangement.pieces.slice(0, 1) }] };
    const unknown = { ...entry, key: 'no/rule:nobody' };
    expect(analyse({ ...mended, left: [entry, unknown] }).left).toEqual([
      { ...entry, does: 'nothing' },
      { ...unknown, does: 'nothing' },
    ]);
    expect(sayLeftState({ does: 'nothing' })).toBe('This no longer does anything: take it away.');
  });

  it('is told apart from what another arrangement still needs', () => {
    const [arrangement] = room.arrangements;
    if (!arrangement) throw new Error('the room has an arrangement');
    const apart = { ...arrangement, id: 'a2', pieces: arrangement.pieces.slice(0, 1) };
    const both = { ...room, arrangements: [arrangement, apart], left: [entry] };
    expect(analyse(both, { arrangement: 'a2' }).left).toEqual([{ ...entry, does: 'elsewhere' }]);
    expect(sayLeftState({ does: 'elsewhere' })).toContain('but in another');
    expect(leftStates(both, 'a1', analyse(both, { arrangement: 'a1' }).findings)).toEqual([{ ...entry, does: 'here' }]);
  });

  it('is open again once it has become worse than it was when it was left', () => {
    const full = (count: number) => ({
      ...plainRoom(),
      ruleSet: 'england',
      children: { ...room.children, groups: [{ id: 'g1', name: 'all', fromMonths: 36, toMonths: 47, count }] },
      enrolment: [],
    });
    const found = (count: number, left: typeof room.left = []) => {
      const report = analyse({ ...full(count), left });
      return { report, finding: report.findings.find(({ rule }) => rule === 'places/area') };
    };
    const first = found(20).finding;
    if (!first) throw new Error('20 children are too many for the plain room');
    const left = [{ ...entry, key: first.key, was: asLeft(first) }];
    expect(found(20, left)).toMatchObject({ finding: { leftReason: entry.reason }, report: { left: [{ does: 'here' }] } });
    expect(found(30, left)).toMatchObject({ finding: { leftReason: null }, report: { left: [{ does: 'worse' }] } });
    // As it was left before such figures were kept.
    expect(found(30, [{ ...entry, key: first.key }]).finding?.leftReason).toBe(entry.reason);
    expect(sayLeftState({ does: 'worse' })).toContain('open again');
  });

  it('is not told where only some of the rules were run', () => {
    expect(analyse({ ...room, left: [entry] }, { tiers: ['live'] }).left).toBeUndefined();
  });
});
