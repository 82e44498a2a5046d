import { describe, expect, it } from 'vitest';
import { listRows } from '#client/lists/shelfRows.ts';
import { itemsInOrder } from '#client/plan/items.ts';
import { analyse } from '#model/analysis/report.ts';
import type { Finding } from '#model/findings/finding.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';
import { planSession } from '../plan/planSession.ts';

const session = () =>
  planSession({
    pieces: [
      { id: 't1', kind: 'table', x: 2000, y: 3000, width: 1200, depth: 600, height: 530 },
      { id: 's2', kind: 'shelf', name: 'Shelf 2', x: 3000, y: 160, width: 1500, depth: 320 },
      {
        id: 's1',
        kind: 'shelf',
        name: 'First numbers',
        x: 4500,
        y: 160,
        width: 1200,
        depth: 320,
        height: 700,
        locked: true,
        levels: [{ id: 'l1', surface: 640 }],
      },
    ],
    room: { fixtures: [{ id: 'f1', kind: 'sink', x: 300, y: 4000, width: 600, depth: 450 }] },
    materials: [{ id: 'm1', name: 'Number rods', area: 'mathematics' }],
    placements: [{ material: 'm1', piece: 's1', level: 'l1', x: 0 }],
  });

const finding = (rule: string, severity: Finding['severity'], subjects: string[], leftReason: string | null = null): Finding => ({
  key: `${rule}${subjects.join()}`,
  rule,
  messageKey: 'm',
  outcome: 'problem',
  severity,
  subjects,
  message: 'm',
  why: '',
  sources: [],
  missing: [],
  leftReason,
});
const measuresOfNothing = analyse(plainRoom()).measures;
const withFindings = (findings: Finding[]) => {
  const open = session();
  open.setReport({
    format: 'lowshelf.report',
    version: 1,
    classroom: '',
    arrangement: 'a1',
    answers: {},
    findings,
    measures: measuresOfNothing,
  });
  return listRows(open);
};

describe('the plan in words', () => {
  it('lists the same things as the plan, in the same order', () => {
    const open = session();
    const rows = listRows(open);
    const listed = [...rows.shelves, ...rows.others, ...rows.fixtures, ...rows.openings, ...rows.walls].map(({ kind, id }) => ({
      kind,
      id,
    }));
    expect(listed).toEqual(itemsInOrder(open.arrangement(), open.classroom()));
  });

  it('says number, area, what it holds, size, trays', () => {
    const [first, second] = listRows(session()).shelves;
    expect(first).toMatchObject({
      number: '1',
      name: 'Shelf 1',
      area: 'mathematics',
      holds: 'First numbers',
      size: '1.20 × 0.70',
      trays: 1,
      isLocked: true,
    });
    expect(second).toMatchObject({ number: '2', holds: 'Shelf 2', size: '1.50 × –', trays: 0 });
  });

  it('says what the checks are about, the gravest first, and leaves out what was left as it is', () => {
    const rows = withFindings([
      finding('order/sequence', 'should', ['s1']),
      finding('way/narrow', 'must', ['s1', 's2']),
      finding('reach/take', 'must', ['s2'], 'the class agreed'),
      finding('survey/outside', 'should', ['wall:c1']),
      finding('steady/tip', 'should', ['s1']),
    ]);
    expect(rows.shelves[0]).toMatchObject({ check: 'way, order, steady', severity: 'must', graves: 'must, should, should' });
    expect(rows.shelves[1]).toMatchObject({ check: 'way', severity: 'must' });
    expect(rows.others[0]).toMatchObject({ check: 'fine', severity: null });
    expect(rows.walls[0]).toMatchObject({ name: 'North wall', check: 'drawing', size: '6.00 m' });
  });

  it('says of a shelf what the checks of its trays are about', () => {
    const rows = withFindings([finding('order/sequence', 'should', ['m1']), finding('way/width', 'note', ['s1'])]);
    expect(rows.shelves[0]).toMatchObject({ check: 'way, order', severity: 'should' });
    expect(rows.shelves[1]).toMatchObject({ check: 'fine' });
  });

  it('does not call a shelf fine about which a check could not tell, unless that was left as it is', () => {
    const unknown = { ...finding('steady/tip', 'should', ['s1', 's2']), outcome: 'cannot-tell' } as const;
    const rows = withFindings([unknown, finding('way/narrow', 'must', ['s2'])]);
    expect(rows.shelves.map(({ check, severity }) => [check, severity])).toEqual([
      ['not known', null],
      ['way', 'must'],
    ]);
    expect(rows.others[0]).toMatchObject({ check: 'fine' });
    const left = withFindings([{ ...unknown, leftReason: 'the class agreed' }]);
    expect(left.shelves[0]).toMatchObject({ check: 'fine' });
  });

  it('does not call anything fine before the first report', () => {
    expect(listRows(session()).shelves[0]).toMatchObject({ check: 'being looked at', severity: null });
  });

  it('says who else has it in hand', () => {
    const open = session();
    const person = { clientId: 2, name: 'R', initials: 'RT', edge: 'dotted', isMe: false, sheet: 'room', elsewhere: null } as const;
    open.setPeople([{ ...person, holds: 's1', preview: null }]);
    expect(listRows(open).shelves[0]).toMatchObject({ heldBy: 'RT', isMoved: false, edge: 'dotted' });
    open.setPeople([{ ...person, holds: 's1', preview: { piece: 's1', x: 0, y: 0, rotation: 0 } }]);
    expect(listRows(open).shelves[0]).toMatchObject({ heldBy: 'RT', isMoved: true });
  });
});
