import { narrow } from '#model/rules/way/narrow.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';
import { testRule } from '#tests/support/ruleTester.ts';

type Piece = NonNullable<PlainRoomChange['pieces']>[number];
const block = (id: string, x: number, y: number, w: number, d: number, change: Partial<Piece> = {}): Piece => ({
  id,
  kind: 'other',
  x,
  y,
  width: w,
  depth: d,
  ...change,
});
const shelf = (id: string, x: number, y: number, change: Partial<Piece> = {}): Piece =>
  block(id, x, y, 1200, 320, { kind: 'shelf', ...change });
const south = shelf('s1', 3000, 4840, { rotation: 180 });
const screen = (gap: number, depth: number, y = 2500): Piece => block(`w${y}`, (6000 - gap) / 2, y, 6000 - gap, depth);
const room = (change: PlainRoomChange, ...pieces: Piece[]) => plainRoom({ ...change, pieces });
const crossed = {
  corners: [
    { id: 'c1', x: 0, y: 0 },
    { id: 'c2', x: 6000, y: 5000 },
    { id: 'c3', x: 6000, y: 0 },
    { id: 'c4', x: 0, y: 5000 },
  ],
  openings: [],
};

testRule(narrow, {
  fine: [
    { name: 'nothing near anything', classroom: room({}, block('b1', 3000, 2500, 400, 400)) },
    { name: 'the slit behind a shelf', classroom: room({}, shelf('s1', 3000, 200)) },
    { name: 'wide and short enough (A02)', classroom: room({}, south, screen(815, 610)) },
    { name: 'two of them, 1220 apart (A02)', classroom: room({}, south, screen(815, 200, 1500), screen(815, 200, 2920)) },
  ],
  problem: [
    {
      name: 'on the way to a shelf',
      classroom: room({}, south, screen(900, 800)),
      findings: [{ messageKey: 'holds', severity: 'should', subjects: ['w2500', 'wall:c2'], measured: 900, needed: 915 }],
    },
    {
      name: 'the same on an accessible route',
      classroom: room({ access: { required: true } }, south, screen(700, 200)),
      findings: [{ messageKey: 'holds', severity: 'must', measured: 700, needed: 915 }],
    },
    {
      name: 'under the least width',
      classroom: room({}, south, screen(700, 200)),
      findings: [{ messageKey: 'holds', severity: 'must', measured: 700, needed: 711 }],
    },
    {
      name: 'two pinches too near each other',
      classroom: room({}, south, screen(815, 200, 1500), screen(815, 200, 2900)),
      findings: [
        { messageKey: 'holds', severity: 'should', measured: 815, needed: 915 },
        { messageKey: 'detour', severity: 'note', measured: 815, needed: 915 },
      ],
    },
    {
      name: 'a short cut beside the wide way',
      classroom: room({}, block('b1', 1500, 2500, 400, 400), block('b2', 2400, 2500, 400, 400)),
      findings: [{ messageKey: 'detour', severity: 'note', subjects: ['b1', 'b2'], measured: 500, needed: 915 }],
    },
  ],
  cannotTell: [
    {
      name: 'walls that cross',
      classroom: room({ room: crossed }, south),
      findings: [{ messageKey: 'walls', missing: ['walls that close and do not cross'] }],
    },
    {
      name: 'no door',
      classroom: room({ room: { openings: [] } }, block('b1', 1500, 2500, 400, 400), block('b2', 2400, 2500, 400, 400)),
      findings: [{ messageKey: 'door', missing: ['where the doors and passages are'] }],
    },
  ],
  doesNotApply: [{ name: 'an empty room', classroom: room({}) }],
});
