import { describe, expect, it } from 'vitest';
import { RunningAnalysis } from '#model/analysis/running.ts';
import { rules } from '#model/rules/registry.ts';
import type { Arrangement, Classroom, Piece } from '#model/schema/types.ts';
import { furnished } from '#tests/support/furnished.ts';

const live = { tiers: ['live'], arrangement: 'a1' } as const;
const first = furnished();

const inArrangement = (change: (of: Arrangement) => Partial<Arrangement>): Classroom => ({
  ...first,
  arrangements: first.arrangements.map((a) => (a.id === 'a1' ? { ...a, ...change(a) } : a)),
});
const withPiece = (id: string, change: Partial<Piece>): Classroom =>
  inArrangement((a) => ({ pieces: a.pieces.map((p) => (p.id === id ? { ...p, ...change } : p)) }));

/** The rules that run again after a change, live ones or all. */
function ranAfter(next: Classroom, options: object = live): readonly string[] {
  const running = new RunningAnalysis();
  running.analyse(first, { ...options, mats: null });
  const report = running.analyse(next, { ...options, mats: null });
  expect(report).toEqual(new RunningAnalysis().analyse(next, { ...options, mats: null }));
  return running.ran;
}
const groups = (ids: readonly string[]): string[] => [...new Set(ids.map((id) => id.split('/')[0] ?? id))];

describe('the rules that run', () => {
  it('are all at first, and none when nothing changed', () => {
    const running = new RunningAnalysis();
    running.analyse(first, live);
    expect(running.ran).toEqual(rules.filter((rule) => rule.tier === 'live').map((rule) => rule.id));
    running.analyse(first, live);
    expect(running.ran).toEqual([]);
  });

  it.each<[string, Classroom]>([
    ['the class is named otherwise', { ...first, name: 'Room 2' }],
    ['lengths are said in feet and inches', { ...first, display: { ...first.display, units: 'imperial' } }],
    ['a finding is left as it is', { ...first, left: [{ key: 'steady/tip:s1+s2#unknown', reason: 'fixed in summer', by: '', at: '' }] }],
    ['a remark is written', { ...first, notes: [...first.notes, { ...(first.notes[0] as Classroom['notes'][number]), id: 'n2' }] }],
    [
      'the other arrangement is changed',
      { ...first, arrangements: first.arrangements.map((a) => (a.id === 'a2' ? { ...a, name: 'x' } : a)) },
    ],
    ['the arrangement is named otherwise', inArrangement(() => ({ name: 'Autumn' }))],
  ])('are none when %s', (_, next) => {
    expect(ranAfter(next)).toEqual([]);
  });

  it('are none of the ways, the walls and what stands safe when a tray moves', () => {
    const next = inArrangement((a) => ({ placements: a.placements.map((p) => (p.material === 'm1' ? { ...p, x: 60 } : p)) }));
    const ran = ranAfter(next);
    expect(groups(ran)).toEqual(['reach', 'order']);
    expect(ran).toContain('order/crowded');
  });

  it('are those of the shelves as well when a shelf moves, and not those of the class', () => {
    const ran = ranAfter(withPiece('s1', { x: 950 }), { arrangement: 'a1' });
    expect(ran).toEqual(expect.arrayContaining(['way/width', 'way/narrow', 'steady/overlap', 'survey/outside', 'places/area']));
    for (const rule of ['way/door', 'places/fixtures', 'survey/closure']) expect(ran).not.toContain(rule);
  });

  it('are none of the order of materials when a table moves', () => {
    expect(groups(ranAfter(withPiece('t1', { x: 3100 })))).not.toContain('order');
  });

  it('is the one whose own setting changed', () => {
    expect(ranAfter({ ...first, options: { 'reach/take': { spare: 30 } } })).toEqual(['reach/take']);
    expect(ranAfter({ ...first, options: { 'steady/tip': { ratio: 3 } } }, { arrangement: 'a1' })).toEqual(['steady/tip']);
  });

  it('are none of the sight and the exits when the children grow older', () => {
    const groupsNow = first.children.groups.map((g) => ({ ...g, fromMonths: 60, toMonths: 72 }));
    const ran = ranAfter({ ...first, children: { ...first.children, groups: groupsNow } }, { arrangement: 'a1' });
    expect(ran).toContain('reach/take');
    expect(groups(ran)).not.toContain('way');
  });
});

describe('what a rule that breaks does', () => {
  it('leaves nothing behind: it runs again, and its answer is the right one', () => {
    const [rule] = rules;
    if (!rule) throw new Error('there are rules');
    let breaks = true;
    const fragile = {
      ...rule,
      judge: (context: Parameters<typeof rule.judge>[0]) => {
        if (breaks) throw new Error('broken');
        return rule.judge(context);
      },
    };
    const running = new RunningAnalysis();
    expect(() => running.analyse(first, { rules: [fragile] })).toThrow('broken');
    breaks = false;
    expect(running.analyse(first, { rules: [fragile], mats: null })).toEqual(
      new RunningAnalysis().analyse(first, { rules: [rule], mats: null }),
    );
  });
});
