import { measuresOf } from '#model/measures/measures.ts';
import { seat } from '#model/rules/reach/seat.ts';
import { buildScene } from '#model/scene/build.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';
import { testRule } from '#tests/support/ruleTester.ts';

type Piece = NonNullable<PlainRoomChange['pieces']>[number];

// Size marks by EN 1729-1 (D01): table heights 460 mark 1, 530 mark 2, 590 mark 3, 640 mark 4. Median girls (CDC 2000)
// of 42 months are about 0.98 m tall, mark 1; of 66 months about 1.11 m, mark 2; of 114 months about 1.36 m, mark 3.
const group = (fromMonths: number, count: number, id = `g${fromMonths}`) => ({
  id,
  name: id,
  fromMonths,
  toMonths: fromMonths + 12,
  count,
});
const table = (id: string, height: number | null, seats: number, y = 1000): Piece => ({
  id,
  kind: 'table',
  name: id,
  x: 3000,
  y,
  width: 1200,
  depth: 600,
  height,
  seatSides: { front: seats },
});
/** Mats as large as the room: none fits, so every child needs a seat. */
const noMat = { mat: { width: 6000, depth: 6000 } };
const room = (groups: ReturnType<typeof group>[], pieces: Piece[], change: PlainRoomChange = {}) =>
  plainRoom({ children: { groups }, pieces, floorWork: noMat, ...change });
const crossed = [
  { id: 'c1', x: 0, y: 0 },
  { id: 'c2', x: 6000, y: 5000 },
  { id: 'c3', x: 6000, y: 0 },
  { id: 'c4', x: 0, y: 5000 },
];
/** As many children as mats that can at most lie between the shelves; the ways leave room for fewer. */
function asManyAsPerhaps() {
  const shelves = [900, 2500, 4100].map((y, i): Piece => ({ id: `s${i}`, kind: 'shelf', x: 3000, y, width: 2400, depth: 300 }));
  const full = (count: number) => room([group(36, count)], shelves, { floorWork: {} });
  const mats = measuresOf(buildScene(full(1))).mats();
  if (!mats || mats.count >= mats.upperBound) throw new Error('in this room every mat that may be possible was found');
  return full(mats.upperBound);
}
const short = { messageKey: 'tooFew', severity: 'should' } as const;

testRule(seat, {
  fine: [
    { name: 'seats of their mark', classroom: room([group(36, 4)], [table('t1', 460, 4)]) },
    { name: 'one mark larger', classroom: room([group(36, 4)], [table('t1', 530, 4)]) },
    {
      name: 'a free seat of 310',
      classroom: room([group(36, 1)], [{ id: 'k1', kind: 'seat', x: 3000, y: 3000, width: 300, depth: 300, height: 310 }]),
    },
    {
      name: 'each group its own, shared out though the first fits both',
      classroom: room([group(36, 2), group(60, 2)], [table('t1', 530, 2), table('t2', 400, 2, 3000)]),
    },
    { name: 'enough mats for all', classroom: room([group(36, 3)], [], { floorWork: {} }) },
    {
      name: 'a table without a height that is not needed',
      classroom: room([group(36, 2)], [table('t1', 460, 2), table('t2', null, 2, 3000)]),
    },
    {
      name: 'a class that allows three marks',
      classroom: room([group(36, 2)], [table('t1', 640, 2)], { options: { 'reach/seat': { tolerance: 3 } } }),
    },
  ],
  problem: [
    {
      name: 'two marks too large',
      classroom: room([group(36, 4)], [table('t1', 590, 4)]),
      findings: [{ ...short, subjects: ['g36'], measured: 0, needed: 4 }],
    },
    { name: 'one too few', classroom: room([group(36, 5)], [table('t1', 460, 4)]), findings: [{ ...short, measured: 4, needed: 5 }] },
    {
      name: 'two groups that want the same seats',
      classroom: room([group(36, 2), group(108, 2)], [table('t1', 530, 3)]),
      findings: [{ ...short, subjects: ['g108'], measured: 1, needed: 2 }],
    },
    {
      name: 'not even the seats of unknown size are enough',
      classroom: room([group(36, 5)], [table('t1', 460, 2), table('t2', null, 2, 3000)]),
      findings: [{ ...short, measured: 2, needed: 5 }],
    },
  ],
  cannotTell: [
    {
      name: 'a table whose height decides',
      classroom: room([group(36, 4)], [table('t1', 460, 2), table('t2', null, 2, 3000)]),
      findings: [{ messageKey: 'notKnown', measured: 2, needed: 4, missing: ['give t2 its height'] }],
    },
    {
      name: 'more mats than were found may lie on the floor',
      classroom: asManyAsPerhaps(),
      findings: [{ messageKey: 'notKnown', subjects: ['g36'] }],
    },
    {
      name: 'younger than the growth tables',
      classroom: room([group(6, 2)], [table('t1', 400, 2)]),
      findings: [{ messageKey: 'tooYoung', missing: ['measure the knee height of g6 and choose their seats by it'] }],
    },
    {
      name: 'walls that cross',
      classroom: room([group(36, 2)], [table('t1', 460, 2)], { room: { corners: crossed } }),
      findings: [{ messageKey: 'noMats' }],
    },
  ],
  doesNotApply: [{ name: 'no children', classroom: room([], [table('t1', 460, 2)]) }],
});
