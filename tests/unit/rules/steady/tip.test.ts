import { tip } from '#model/rules/steady/tip.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';
import { testRule } from '#tests/support/ruleTester.ts';

type Piece = NonNullable<PlainRoomChange['pieces']>[number];
const shelf = (change: Partial<Piece> = {}): Piece => ({
  id: 's1',
  kind: 'shelf',
  name: 'A',
  x: 3000,
  y: 2500,
  width: 1200,
  depth: 300,
  height: 700,
  anchored: false,
  ...change,
});
const room = (...pieces: Piece[]) => plainRoom({ pieces });
const loose = { messageKey: 'loose', severity: 'should' } as const;

testRule(tip, {
  fine: [
    { name: 'fixed', classroom: room(shelf({ anchored: true, height: 1800 })) },
    { name: 'just twice its depth', classroom: room(shelf({ height: 600 })) },
    { name: '50 mm before a wall', classroom: room(shelf({ y: 200 })) },
    { name: 'its front to the wall holds it as well', classroom: room(shelf({ y: 200, rotation: 180 })) },
    { name: 'back to back, 50 mm apart', classroom: room(shelf({ rotation: 180 }), shelf({ id: 's2', y: 2850 })) },
    {
      name: 'before a partition',
      classroom: plainRoom({
        room: { fixtures: [{ id: 'f1', kind: 'partition', x: 3000, y: 2300, width: 2000, depth: 60 }] },
        pieces: [shelf()],
      }),
    },
    { name: 'not known whether it is fixed, but low', classroom: room(shelf({ height: 500, anchored: null })) },
    { name: 'not known how high, but fixed', classroom: room(shelf({ height: null, anchored: true })) },
    {
      name: 'a class that asks from three times the depth',
      classroom: plainRoom({ pieces: [shelf()], options: { 'steady/tip': { ratio: 3 } } }),
    },
    {
      name: 'a class that takes 100 mm as near',
      classroom: plainRoom({ pieces: [shelf({ y: 250 })], options: { 'steady/tip': { near: 100 } } }),
    },
  ],
  problem: [
    { name: 'free in the room', classroom: room(shelf()), findings: [{ ...loose, subjects: ['s1'], measured: 700, needed: 600 }] },
    { name: '51 mm before a wall goes back to it', classroom: room(shelf({ y: 201 })), findings: [{ ...loose, fix: 'gone' }] },
    {
      name: 'two before their walls go back to them',
      classroom: room(shelf({ y: 700 }), shelf({ id: 's2', x: 5400, rotation: 90 })),
      findings: [{ ...loose, subjects: ['s1', 's2'], fix: 'gone' }],
    },
    { name: 'locked, it is not moved', classroom: room(shelf({ y: 201, locked: true })), findings: [loose] },
    {
      name: 'a table stands between it and the wall',
      classroom: room(shelf({ y: 900 }), shelf({ id: 't1', kind: 'table', y: 300 })),
      findings: [loose],
    },
    {
      name: 'one has no wall behind it, so not all are mended',
      classroom: room(shelf({ y: 201 }), shelf({ id: 's2', y: 2500 })),
      findings: [{ ...loose, subjects: ['s1', 's2'] }],
    },
    { name: 'only its end touches a wall', classroom: room(shelf({ x: 600 })), findings: [loose] },
    { name: 'a low table behind holds nothing', classroom: room(shelf(), shelf({ id: 't1', kind: 'table', y: 2200 })), findings: [loose] },
    {
      name: 'one finding for the room, the slimmest in figures',
      classroom: room(shelf(), shelf({ id: 's2', y: 3500, height: 1800, for: 'adults', closed: true, depth: 600 })),
      findings: [{ ...loose, subjects: ['s1', 's2'], measured: 1800, needed: 1200 }],
    },
    {
      name: 'one that is loose and one that nobody asked about',
      classroom: room(shelf(), shelf({ id: 's2', name: 'B', y: 3500, anchored: null })),
      findings: [
        { ...loose, subjects: ['s1'] },
        { messageKey: 'unknown', subjects: ['s2'] },
      ],
    },
  ],
  cannotTell: [
    {
      name: 'not known whether it is fixed',
      classroom: room(shelf({ anchored: null })),
      findings: [{ messageKey: 'unknown', severity: 'should', missing: ['say whether A is fixed to wall or floor'] }],
    },
    {
      name: 'not fixed, height not known',
      classroom: room(shelf({ height: null })),
      findings: [{ messageKey: 'unknown', missing: ['give A its height'] }],
    },
  ],
  doesNotApply: [{ name: 'no shelf', classroom: room(shelf({ kind: 'table' })) }],
});
