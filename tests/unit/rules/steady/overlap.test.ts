import { overlap } from '#model/rules/steady/overlap.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';
import { testRule } from '#tests/support/ruleTester.ts';

type Piece = NonNullable<PlainRoomChange['pieces']>[number];
const piece = (id: string, x: number, y: number, change: Partial<Piece> = {}): Piece => ({
  id,
  kind: 'shelf',
  x,
  y,
  width: 1200,
  depth: 300,
  ...change,
});
const room = (...pieces: Piece[]) => plainRoom({ pieces });
const ell: NonNullable<Piece['outline']> = [
  [-500, -500],
  [500, -500],
  [500, -200],
  [-200, -200],
  [-200, 500],
  [-500, 500],
];
const table = piece('t1', 3000, 2500, { kind: 'table', width: 1200, depth: 600 });
const chair = (id: string, x: number, y: number, of: string | null): Piece =>
  piece(id, x, y, { kind: 'seat', width: 320, depth: 320, table: of });
const sink = { id: 'f1', kind: 'sink', x: 3000, y: 225, width: 600, depth: 450 } as const;
const must = { messageKey: 'overlap', severity: 'must' } as const;

testRule(overlap, {
  fine: [
    { name: 'end to end', classroom: room(piece('s1', 2000, 2000), piece('s2', 3200, 2000)) },
    { name: 'within the 1 mm that a tape cannot tell', classroom: room(piece('s1', 2000, 2000), piece('s2', 3199, 2000)) },
    {
      name: 'boxes that cross while the turned pieces do not',
      classroom: room(piece('s1', 2000, 2000, { rotation: 45 }), piece('s2', 2450, 1700, { rotation: 45 })),
    },
    {
      name: 'a stool in the notch of an L',
      classroom: room(
        piece('s1', 2000, 2000, { width: 1000, depth: 1000, outline: ell }),
        piece('k1', 2200, 2200, { kind: 'seat', width: 600, depth: 600 }),
      ),
    },
    { name: 'seats tucked under their table', classroom: room(table, chair('k1', 2800, 2750, 't1'), chair('k2', 3200, 2750, 't1')) },
    {
      name: 'a shelf on a rug',
      classroom: room(piece('r1', 3000, 2500, { kind: 'rug', width: 3000, depth: 2000 }), piece('s1', 3000, 2500), piece('s2', 3000, 3200)),
    },
    {
      name: 'two round tables that only their boxes share',
      classroom: room(
        piece('t1', 2000, 2000, { kind: 'table', width: 1000, depth: 1000, round: true }),
        piece('t2', 2750, 2750, { kind: 'table', width: 1000, depth: 1000, round: true }),
      ),
    },
    {
      name: 'a shelf on floor that is walked on',
      classroom: plainRoom({
        room: { fixtures: [{ ...sink, kind: 'step', walkable: true }] },
        pieces: [piece('s1', 3000, 225), piece('s2', 3000, 3000)],
      }),
    },
    {
      name: 'a sink set into a counter',
      classroom: plainRoom({
        room: { fixtures: [sink, { ...sink, id: 'f2', kind: 'built-in', width: 1800 }] },
        pieces: [piece('s1', 3000, 3000)],
      }),
    },
  ],
  problem: [
    {
      name: 'a shelf 80 mm into another',
      classroom: room(piece('s1', 2000, 2000), piece('s2', 3120, 2000)),
      findings: [{ ...must, subjects: ['s1', 's2'], measured: 80, needed: 0, fix: 'gone' }],
    },
    {
      name: 'turned by 45 degrees: counted along the sides of the pieces, not of their boxes',
      classroom: room(piece('s1', 2000, 2000, { rotation: 45 }), piece('s2', 2300, 1900, { rotation: 45 })),
      findings: [{ ...must, measured: 300 - 400 * Math.SQRT1_2, fix: 'gone' }],
    },
    {
      name: 'a stool that reaches into both arms of an L',
      classroom: room(
        piece('s1', 2000, 2000, { width: 1000, depth: 1000, outline: ell }),
        piece('k1', 2050, 2050, { kind: 'seat', width: 600, depth: 600 }),
      ),
      findings: [{ ...must, measured: Math.hypot(50, 50), fix: 'gone' }],
    },
    {
      name: 'the same place twice: the way out, not 0',
      classroom: room(piece('s1', 2000, 2000), piece('s2', 2000, 2000)),
      findings: [{ ...must, measured: 300, fix: 'gone' }],
    },
    {
      name: 'a seat of another table, and one of a table that is gone',
      classroom: room(table, chair('k1', 3000, 2700, 't2'), chair('k2', 2600, 2700, 'gone')),
      findings: [
        { ...must, subjects: ['t1', 'k1'], measured: 260, fix: 'gone' },
        { ...must, subjects: ['t1', 'k2'], measured: 260, fix: 'gone' },
      ],
    },
    {
      name: 'two seats of one table in the same place',
      classroom: room(table, chair('k1', 2800, 2950, 't1'), chair('k2', 3000, 2950, 't1')),
      findings: [{ ...must, subjects: ['k1', 'k2'], measured: 120, fix: 'gone' }],
    },
    {
      name: 'a table pushed with its seats',
      classroom: room(piece('s1', 3000, 2160, { locked: true }), table, chair('k1', 2800, 2750, 't1')),
      findings: [{ ...must, subjects: ['s1', 't1'], measured: 110, fix: 'gone' }],
    },
    {
      name: 'a shelf over a sink: the shelf moves',
      classroom: plainRoom({ room: { fixtures: [sink] }, pieces: [piece('s1', 3800, 160)] }),
      findings: [{ ...must, subjects: ['s1', 'f1'], measured: 100, fix: 'gone' }],
    },
    {
      name: 'locked pieces are not pushed',
      classroom: room(piece('s1', 2000, 2000, { locked: true }), piece('s2', 3120, 2000, { locked: true })),
      findings: [{ ...must, measured: 80 }],
    },
    {
      name: 'no push out of the room: there is no free place near',
      classroom: plainRoom({
        room: {
          corners: [
            { id: 'c1', x: 0, y: 0 },
            { id: 'c2', x: 1900, y: 0 },
            { id: 'c3', x: 1900, y: 500 },
            { id: 'c4', x: 0, y: 500 },
          ],
        },
        pieces: [piece('s1', 600, 250), piece('s2', 1300, 250)],
      }),
      findings: [{ ...must, measured: 300 }],
    },
    {
      name: 'a class that takes touching at its word',
      classroom: plainRoom({
        pieces: [piece('s1', 2000, 2000), piece('s2', 3199.5, 2000)],
        options: { 'steady/overlap': { touching: 0 } },
      }),
      findings: [{ ...must, measured: 0.5, fix: 'gone' }],
    },
  ],
  cannotTell: [],
  neverCannotTell: 'every piece has a size and a place',
  doesNotApply: [
    { name: 'one piece', classroom: room(piece('s1', 2000, 2000)) },
    { name: 'fixtures alone', classroom: plainRoom({ room: { fixtures: [sink, { ...sink, id: 'f2' }] } }) },
  ],
});
