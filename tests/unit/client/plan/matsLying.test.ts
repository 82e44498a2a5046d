import { expect, it } from 'vitest';
import { matsLying } from '#client/plan/matsLying.ts';
import { finding, report } from '../checks/finding.ts';
import { planSession } from './planSession.ts';

it('a mat goes as soon as something stands on it, and a rug takes none away', () => {
  const session = planSession({
    pieces: [
      { id: 't1', kind: 'table', x: 5000, y: 1000, width: 1200, depth: 600, rotation: 30 },
      { id: 'r1', kind: 'rug', x: 1000, y: 2500, width: 2000, depth: 2000 },
    ],
  });
  const places = [
    { x: 1000, y: 2500, width: 700, depth: 1100, rotation: 0 },
    { x: 3000, y: 2500, width: 700, depth: 1100, rotation: 0 },
  ];
  const looked = { ...report([finding()]), measures: { mats: { count: 2, places } } };
  const lying = (): number[] => matsLying(looked, session.arrangement().pieces).map(({ number }) => number);
  expect(lying()).toEqual([1, 2]);
  session.commands.movePiece('a1', 't1', { x: 3500, y: 3000 });
  expect(lying()).toEqual([1]);
  // Wholly on it.
  session.commands.changePiece('a1', 't1', { x: 1000, y: 2500, width: 200, depth: 200 });
  expect(lying()).toEqual([2]);
  // Edge to edge is beside it.
  session.commands.changePiece('a1', 't1', { x: 3450, y: 2500, width: 200, depth: 200, rotation: 0 });
  expect(lying()).toEqual([1, 2]);
  expect(matsLying(null, session.arrangement().pieces)).toEqual([]);
});
