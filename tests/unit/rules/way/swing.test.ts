import { swing } from '#model/rules/way/swing.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';
import { testRule } from '#tests/support/ruleTester.ts';

type Piece = NonNullable<PlainRoomChange['pieces']>[number];
type Room = NonNullable<PlainRoomChange['room']>;

/** A door of 900 in the north wall, hinged at x = 400, that sweeps the quarter circle down to (400, 900). */
const door = { id: 'd1', kind: 'door', from: 'c1', offset: 400, width: 900, swing: 'in-left', exit: true } as const;
const shelf = (x: number, y: number, change: Partial<Piece> = {}): Piece => ({
  id: 's1',
  kind: 'shelf',
  name: 'Sensorial A',
  x,
  y,
  width: 1200,
  depth: 300,
  ...change,
});
const room = (pieces: Piece[], change: Room = {}, options?: Record<string, Record<string, number>>) =>
  plainRoom({ room: { openings: [door], ...change }, pieces, ...(options && { options }) });
/** The swing is a fan in steps of 5 degrees: its last side is turned by half a step. */
const HALF_STEP = Math.cos((2.5 * Math.PI) / 180);
const blocked = { messageKey: 'blocked', severity: 'must', needed: 0 } as const;

testRule(swing, {
  fine: [
    { name: 'a shelf that touches the leaf', classroom: room([shelf(1000, 1050)]) },
    { name: 'a shelf beyond the latch', classroom: room([shelf(1901, 150)]) },
    // From the hinge its corner is 640.32·√2 = 905.6 away: the box about the swing meets it, the quarter circle does not.
    { name: 'a shelf beside the round of the swing', classroom: room([shelf(1640.4, 790.4)]) },
    { name: 'a rug', classroom: room([shelf(1000, 600, { kind: 'rug' }), shelf(3000, 3000, { id: 's2' })]) },
    {
      name: 'a step',
      classroom: room([shelf(3000, 3000)], {
        fixtures: [{ id: 'f1', kind: 'step', x: 800, y: 300, width: 600, depth: 600, walkable: true }],
      }),
    },
    { name: 'a class that takes 30 mm as touching', classroom: room([shelf(1000, 1030)], {}, { 'way/swing': { touching: 30 } }) },
  ],
  problem: [
    {
      name: 'a shelf 100 mm into it',
      classroom: room([shelf(1000, 950)]),
      findings: [{ ...blocked, subjects: ['s1', 'd1'], measured: 100 * HALF_STEP, fix: 'gone' }],
    },
    {
      name: 'a locked shelf is not moved',
      classroom: room([shelf(1000, 950, { locked: true })]),
      findings: [{ ...blocked, measured: 100 * HALF_STEP }],
    },
    {
      name: 'a table goes with its seat, and the seat is no second trouble once it is out',
      classroom: room([
        shelf(1000, 1150, { id: 't1', kind: 'table', depth: 600 }),
        shelf(1000, 1500, { id: 'k1', kind: 'seat', width: 300, table: 't1' }),
      ]),
      findings: [{ ...blocked, subjects: ['t1', 'd1'], measured: 50 * HALF_STEP, fix: 'gone' }],
    },
    {
      name: 'a sink under the leaf stays where it was built',
      classroom: room([], { fixtures: [{ id: 'f1', kind: 'sink', x: 200, y: 700, width: 450, depth: 400 }] }),
      findings: [{ ...blocked, subjects: ['f1', 'd1'], measured: 25 }],
    },
    {
      name: 'hinged on the other side',
      classroom: room([shelf(1800, 700, { width: 1200 })], { openings: [{ ...door, swing: 'in-right' }] }),
      findings: [{ ...blocked, measured: 100, fix: 'gone' }],
    },
  ],
  cannotTell: [
    {
      name: 'walls that cross',
      classroom: room([shelf(1000, 950)], {
        corners: [
          [0, 0],
          [6000, 5000],
          [6000, 0],
          [0, 5000],
        ].map(([x = 0, y = 0], i) => ({ id: `c${i + 1}`, x, y })),
      }),
      findings: [{ messageKey: 'walls', severity: 'must' }],
    },
  ],
  doesNotApply: [
    { name: 'a door that swings out', classroom: room([shelf(1000, 950)], { openings: [{ ...door, swing: 'out-left' }] }) },
    { name: 'a door that slides', classroom: room([shelf(1000, 950)], { openings: [{ ...door, swing: 'sliding' }] }) },
    { name: 'an empty room', classroom: room([]) },
  ],
});
