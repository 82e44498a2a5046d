import { half } from '#model/rules/floor/half.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';
import { testRule } from '#tests/support/ruleTester.ts';

// The source: S1917, pp. 143-144 (materials.md, "A room feels comfortable when a good half of its floor is clear of
// furniture"). The plain room has 30 m².
type Piece = NonNullable<PlainRoomChange['pieces']>[number];
const block = (id: string, x: number, width: number, depth: number, change: Partial<Piece> = {}): Piece => ({
  id,
  kind: 'table',
  x,
  y: 2500,
  width,
  depth,
  ...change,
});
const crossed = [
  { id: 'c1', x: 0, y: 0 },
  { id: 'c2', x: 6000, y: 5000 },
  { id: 'c3', x: 6000, y: 0 },
  { id: 'c4', x: 0, y: 5000 },
];
const full = { messageKey: 'full', severity: 'note', needed: 15 } as const;

testRule(half, {
  fine: [
    { name: 'an empty room', classroom: plainRoom() },
    { name: 'just half', classroom: plainRoom({ pieces: [block('t1', 3000, 5000, 3000)] }) },
    {
      name: 'overlapping things count once',
      classroom: plainRoom({ pieces: [block('t1', 3000, 5000, 3000), block('t2', 3000, 4000, 2000)] }),
    },
    { name: 'a rug is walked on', classroom: plainRoom({ pieces: [block('r1', 3000, 5000, 4500, { kind: 'rug' })] }) },
    { name: 'what reaches through a wall covers only floor inside', classroom: plainRoom({ pieces: [block('t1', 0, 6000, 5000)] }) },
    {
      name: 'a class that wants a third',
      classroom: plainRoom({ pieces: [block('t1', 3000, 5000, 3800)], options: { 'floor/half': { share: 0.33 } } }),
    },
  ],
  problem: [
    {
      name: 'a little more than half',
      classroom: plainRoom({ pieces: [block('t1', 3000, 5000, 3200)] }),
      findings: [{ ...full, measured: 14 }],
    },
    {
      name: 'furniture and a fixture together',
      classroom: plainRoom({
        room: { fixtures: [{ id: 'f1', kind: 'column', x: 5700, y: 2500, width: 500, depth: 1000 }] },
        pieces: [block('t1', 2700, 5000, 3000)],
      }),
      findings: [{ ...full, measured: 14.5 }],
    },
    {
      name: 'a class that wants nine tenths',
      classroom: plainRoom({ pieces: [block('t1', 3000, 2000, 2000)], options: { 'floor/half': { share: 0.9 } } }),
      findings: [{ messageKey: 'full', measured: 26, needed: 27 }],
    },
  ],
  cannotTell: [
    {
      name: 'walls that cross',
      classroom: plainRoom({ room: { corners: crossed } }),
      findings: [{ messageKey: 'walls', missing: ['walls that close without crossing'] }],
    },
  ],
});
