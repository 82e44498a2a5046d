import { manoeuvre } from '#model/rules/way/manoeuvre.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';
import { testRule } from '#tests/support/ruleTester.ts';

// ADA Standards for Accessible Design, 2010: 404.2.4, table 404.2.4.1 (A10; the line of 54 and 42 in is from memory).
// The door's clear opening runs from 1450 to 2300 on the north wall: its leaf hangs at the wall's start, the latch at 2300.
type Piece = NonNullable<PlainRoomChange['pieces']>[number];
type Opening = NonNullable<NonNullable<PlainRoomChange['room']>['openings']>[number];
const IN = 25.4;
const d1: Opening = { id: 'd1', kind: 'door', from: 'c1', offset: 1400, width: 900, clear: 850, swing: 'in-left' };
const block = (id: string, fromX: number, fromY: number, toX: number, toY: number): Piece => ({
  id,
  kind: 'other',
  x: (fromX + toX) / 2,
  y: (fromY + toY) / 2,
  width: toX - fromX,
  depth: toY - fromY,
});
/** Floor left free: from `left` before the hinge to `right` beyond the latch, `out` from the wall. */
const free = (left: number, right: number, out: number): Piece[] => [
  block('k1', 0, 0, 1450 - left, 2500),
  block('k2', 2300 + right, 0, 6000, 2500),
  block('k3', 0, out, 6000, out + 300),
];
const room = (pieces: Piece[], swing: Opening['swing'] = 'in-left', access: PlainRoomChange['access'] = { required: true }) =>
  plainRoom({ access, pieces, room: { openings: [{ ...d1, swing }] } });
const blocked = { messageKey: 'blocked', severity: 'should' } as const;

testRule(manoeuvre, {
  fine: [
    { name: 'an empty room', classroom: room([]) },
    { name: 'front pull: 60 out, 18 beside the latch', classroom: room(free(0, 18 * IN, 60 * IN)) },
    { name: 'front pull as printed', classroom: room(free(0, 455, 1525)) },
    { name: 'hinge pull: 54 out, 42 beside the latch', classroom: room(free(0, 42 * IN, 54 * IN)) },
    { name: 'latch pull: 48 out, 24 beside the latch', classroom: room(free(0, 24 * IN, 48 * IN)) },
    { name: 'front push: 48 out, nothing beside', classroom: room(free(0, 0, 48 * IN), 'out-left') },
    { name: 'hinge push: 42 out, 22 beyond the hinge', classroom: room(free(22 * IN, 0, 42 * IN), 'out-left') },
    { name: 'latch push: 42 out, 24 beside the latch', classroom: room(free(0, 24 * IN, 42 * IN), 'out-left') },
  ],
  problem: [
    {
      name: 'pull: 450 beside the latch',
      classroom: room(free(0, 450, 1600)),
      findings: [{ ...blocked, subjects: ['d1', 'k2'], measured: 0, needed: 1525 }],
    },
    {
      name: 'pull: 1200 out, however wide',
      classroom: room([block('k3', 0, 1200, 6000, 1500)]),
      findings: [{ ...blocked, subjects: ['d1', 'k3'], measured: 1200, needed: 1525 }],
    },
    {
      name: 'pull: 1500 out and 600 beside the latch',
      classroom: room(free(0, 600, 1500)),
      findings: [{ ...blocked, measured: 1500 }],
    },
    {
      name: 'pull: what is free lies on the hinge side',
      classroom: room(free(900, 0, 1600)),
      findings: [{ ...blocked, subjects: ['d1', 'k2'] }],
    },
    {
      name: 'hung at the other jamb, the latch is on the other side',
      classroom: plainRoom({
        access: { wheelchair: true },
        pieces: free(-50, 900, 1600),
        room: { openings: [{ ...d1, swing: 'in-right' }] },
      }),
      findings: [{ ...blocked, subjects: ['d1', 'k1'] }],
    },
    {
      name: 'push: 1050 out',
      classroom: room([block('k3', 0, 1050, 6000, 1500)], 'out-right'),
      findings: [{ ...blocked, measured: 1050, needed: 1220 }],
    },
    {
      name: 'the side wall comes too near',
      classroom: plainRoom({ access: { required: true }, room: { openings: [{ ...d1, offset: 5000, width: 900, swing: 'in-left' }] } }),
      findings: [{ ...blocked, subjects: ['d1'] }],
    },
  ],
  cannotTell: [
    {
      name: 'the walls cross',
      classroom: plainRoom({
        access: { required: true },
        room: {
          corners: (
            [
              [0, 0],
              [6000, 0],
              [0, 5000],
              [6000, 5000],
            ] as const
          ).map(([x, y], i) => ({ id: `c${i + 1}`, x, y })),
        },
      }),
      findings: [{ messageKey: 'walls', severity: 'should', missing: ['walls that close and do not cross'] }],
    },
  ],
  doesNotApply: [
    { name: 'no accessible route is kept', classroom: room(free(0, 0, 500), 'in-left', {}) },
    { name: 'a sliding door', classroom: room([], 'sliding') },
  ],
});
