import { width } from '#model/rules/way/width.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';
import { testRule } from '#tests/support/ruleTester.ts';

type Piece = NonNullable<PlainRoomChange['pieces']>[number];
const shelf = (id: string, x: number, y: number, change: Partial<Piece> = {}): Piece => ({
  id,
  kind: 'shelf',
  x,
  y,
  width: 1200,
  depth: 320,
  ...change,
});
const wall = (id: string, x: number, y: number, w: number, d = 200): Piece => ({ id, kind: 'other', x, y, width: w, depth: d });
/** A shelf in the south, and a screen from the west wall that leaves a way `gap` wide, `depth` long. */
const behindScreen = (gap: number, depth: number, change: PlainRoomChange = {}) =>
  plainRoom({ pieces: [shelf('s1', 3000, 4800, { rotation: 180 }), wall('w1', (6000 - gap) / 2, 2500, 6000 - gap, depth)], ...change });
const crossed = {
  corners: [
    { id: 'c1', x: 0, y: 0 },
    { id: 'c2', x: 6000, y: 5000 },
    { id: 'c3', x: 6000, y: 0 },
    { id: 'c4', x: 0, y: 5000 },
  ],
  openings: [],
};
const required = { access: { required: true } };
const twoDoors = {
  openings: [
    { id: 'd1', kind: 'door', from: 'c1', offset: 400, width: 900, clear: 850, swing: 'out-left' },
    { id: 'd2', kind: 'door', from: 'c3', offset: 400, width: 900, clear: 850, swing: 'out-left' },
  ],
} as const;

testRule(width, {
  fine: [
    { name: 'an open room', classroom: plainRoom({ pieces: [shelf('s1', 3000, 200)] }) },
    { name: 'the door itself is left out', classroom: plainRoom({ pieces: [shelf('s1', 3000, 4800, { rotation: 180 })], ...required }) },
    { name: 'ADA 403.5.1: 36 in exactly (A01)', classroom: behindScreen(914.4, 1000, required) },
    { name: 'ADA 403.5.1 exception: 32 in for 24 in (A02)', classroom: behindScreen(812.8, 609.6, required) },
    {
      name: "an adults' shelf behind a slit",
      classroom: plainRoom({ pieces: [shelf('s0', 3000, 200), shelf('s1', 3000, 4800, { for: 'adults' }), wall('w1', 2800, 2500, 5600)] }),
    },
    { name: 'two doors, nothing between', classroom: plainRoom({ room: { openings: [...twoDoors.openings] } }) },
  ],
  problem: [
    {
      name: 'a narrow way, no accessible route',
      classroom: behindScreen(900, 1000),
      findings: [{ messageKey: 'narrow', severity: 'should', subjects: ['s1', 'd1'], measured: 900, needed: 915 }],
    },
    {
      name: 'the same on an accessible route',
      classroom: behindScreen(900, 1000, required),
      findings: [{ messageKey: 'narrow', severity: 'must', measured: 900, needed: 915 }],
    },
    {
      name: 'ADA 403.5.1: 32 in for more than 24 in (A02)',
      classroom: behindScreen(850, 620),
      findings: [{ messageKey: 'narrow', severity: 'should', measured: 850, needed: 915 }],
    },
    {
      name: 'under the least width',
      classroom: behindScreen(700, 100),
      findings: [{ messageKey: 'narrow', severity: 'must', measured: 700, needed: 711 }],
    },
    {
      name: 'no way at all',
      classroom: behindScreen(0, 100),
      findings: [{ messageKey: 'none', severity: 'must', measured: 0, needed: 711 }],
    },
    {
      name: 'half of the front stands behind another piece',
      classroom: plainRoom({ pieces: [shelf('s1', 3000, 200), wall('w1', 3300, 700, 600)] }),
      findings: [{ messageKey: 'covered', severity: 'should', subjects: ['s1', 'd1'], measured: 0.5, needed: 1 }],
    },
    {
      name: 'a table: the seated side is reached round the chairs',
      classroom: plainRoom({
        pieces: [
          { id: 't1', kind: 'table', x: 3000, y: 3000, width: 1200, depth: 600, seatSides: { front: 2 } },
          wall('w1', 2700, 2000, 5400),
        ],
      }),
      findings: [{ messageKey: 'narrow', severity: 'must', subjects: ['t1', 'd1'], measured: 600, needed: 711 }],
    },
    {
      name: 'a sink',
      classroom: plainRoom({
        room: { fixtures: [{ id: 'f1', kind: 'sink', x: 300, y: 4775, width: 600, depth: 450, rotation: 180 }] },
        pieces: [wall('w1', 2700, 2000, 5400)],
      }),
      findings: [{ messageKey: 'narrow', severity: 'must', subjects: ['f1', 'd1'], measured: 600, needed: 711 }],
    },
    {
      name: 'two doors with a screen between: said once',
      classroom: plainRoom({ room: { openings: [...twoDoors.openings] }, pieces: [wall('w1', 2700, 2000, 5400)] }),
      findings: [{ messageKey: 'narrow', severity: 'must', subjects: ['d1', 'd2'], measured: 600, needed: 711 }],
    },
  ],
  cannotTell: [
    {
      name: 'walls that cross',
      classroom: plainRoom({ room: crossed, pieces: [shelf('s1', 3000, 200)] }),
      findings: [{ messageKey: 'walls', missing: ['walls that close and do not cross'] }],
    },
    {
      name: 'no door',
      classroom: plainRoom({ room: { openings: [] }, pieces: [shelf('s1', 3000, 200)] }),
      findings: [{ messageKey: 'door', missing: ['where the doors and passages are'] }],
    },
  ],
  doesNotApply: [{ name: 'an empty room with one door', classroom: plainRoom() }],
});
