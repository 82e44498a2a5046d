import { describe, expect, it } from 'vitest';
import { orderMoves } from '#client/front/orderMoves.ts';
import type { Finding } from '#model/findings/finding.ts';
import type { Placement } from '#model/schema/types.ts';
import { finding, report } from '../checks/finding.ts';
import { shelfRoom } from './shelf.ts';

const scene = shelfRoom([
  ['a', 'top', 0, 200, 1],
  ['c', 'top', 300, 200, 3],
  ['b', 'mid', 0, 200, 2],
]);
const place = (material: string, level: string, x: number) => ({
  do: 'place' as const,
  placement: { ...(scene.stands.get(material)?.placement as Placement), level, x },
});
const order = (change: Partial<Finding>) => finding({ rule: 'order/sequence', subjects: ['c'], ...change });
const reportOf = (found: Finding) => ({
  ...report([found]),
  measures: { order: [{ moves: [{ material: 'c', to: { piece: 's1', side: 'front', level: 'mid', x: 300 } }] }] },
});
const moved = (found: Finding) => [...orderMoves(reportOf(found), scene).keys()];

describe('what is drawn as moving', () => {
  it('is what the fix moves, not what only slides along for it', () => {
    const found = order({ fix: { label: 'Do it: Tray b to the top board', edits: [place('b', 'top', 250), place('c', 'top', 500)] } });
    const moves = orderMoves(reportOf(found), scene);
    expect([...moves.keys()]).toEqual(['b']);
    expect(moves.get('b')).toMatchObject({ piece: 's1', level: 'top', x: 250 });
    expect(moves.get('b')?.slid).toEqual(new Map([['c', 500]]));
  });

  it('is the fewest trays where nothing is proposed', () => {
    expect(moved(order({}))).toEqual(['c']);
  });

  it('of two that change places on a board is the one that the words name', () => {
    const edits = [place('c', 'top', 0), place('a', 'top', 300)];
    expect(moved(order({ fix: { label: 'Do it: Tray a in order', edits } }))).toEqual(['a']);
    expect(moved(order({ fix: { label: 'Do it: Tray c in order', edits } }))).toEqual(['c']);
    // Too many to be named: those that the finding is about.
    expect(moved(order({ fix: { label: 'Do it: Tray x, Tray a and 3 more in order', edits } }))).toEqual(['c']);
  });

  it('is the same map for the same report and scene', () => {
    const one = reportOf(order({}));
    expect(orderMoves(one, scene)).toBe(orderMoves(one, scene));
    expect(orderMoves(null, scene).size).toBe(0);
  });
});
