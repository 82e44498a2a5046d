import { standing } from '#model/rules/way/standing.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';
import { testRule } from '#tests/support/ruleTester.ts';

// ADA Standards for Accessible Design, 2010: 305.3 (A07), 305.7.1 and 305.7.2 (A08). The rooms are ours.
type Piece = NonNullable<PlainRoomChange['pieces']>[number];
const IN = 25.4;
const required = { access: { required: true } };
/** A shelf at the south wall, front at y 4680. */
const shelf: Piece = { id: 's1', kind: 'shelf', name: 'Sensorial A', x: 3000, y: 4840, width: 1200, depth: 320, rotation: 180 };
const FRONT = 4680;
const block = (id: string, x: number, y: number, width: number, depth: number): Piece => ({
  id,
  kind: 'other',
  x: x + width / 2,
  y: y + depth / 2,
  width,
  depth,
});
/** Something right across, `off` before the front. */
const facing = (off: number): Piece => block('k1', 1000, FRONT - off - 300, 4000, 300);
/** Sides that leave `wide` between them and reach `deep` out from the front. */
const sides = (wide: number, deep: number): Piece[] => [
  block('k1', 1000, FRONT - deep, 2000 - wide / 2, deep + 320),
  block('k2', 3000 + wide / 2, FRONT - deep, 2000 - wide / 2, deep + 320),
];
const narrow: Piece = { ...shelf, width: 600 };
const room = (pieces: Piece[], change: PlainRoomChange = required) => plainRoom({ ...change, pieces });

testRule(standing, {
  fine: [
    { name: 'nothing before it', classroom: room([shelf]) },
    { name: 'A07: 760 out, alongside', classroom: room([shelf, facing(760)]) },
    { name: 'A07: head on between two things that reach 610 out', classroom: room([narrow, ...sides(760, 610)]) },
    { name: 'A08: boxed in deeper, 36 in', classroom: room([narrow, ...sides(36 * IN, 1300)]) },
    {
      name: 'A08: alongside in a niche 380 deep, 48 in wide',
      classroom: room([shelf, ...sides(48 * IN, 380), facing(800)].map((p, i) => ({ ...p, id: `p${i}` }))),
    },
    {
      name: 'A08: alongside in a niche 760 deep, 60 in wide',
      classroom: room([shelf, ...sides(60 * IN, 760), facing(800)].map((p, i) => ({ ...p, id: `p${i}` }))),
    },
    {
      name: 'a table with its chairs pushed in',
      classroom: room([
        { id: 't1', kind: 'table', x: 3000, y: 4700, width: 1200, depth: 600, rotation: 180, seatSides: { front: 2 } },
        block('k1', 1000, 3300, 4000, 300),
      ]),
    },
  ],
  problem: [
    {
      name: 'A07: 755 out',
      classroom: room([shelf, facing(755)]),
      findings: [{ messageKey: 'none', severity: 'should', subjects: ['s1'], measured: 0, needed: 760 }],
    },
    {
      name: 'A07: 755 between two things, even shallow',
      classroom: room([narrow, ...sides(755, 500)]),
      findings: [{ messageKey: 'none', measured: 755 }],
    },
    {
      name: 'A08: boxed in deeper than 610, 900 wide',
      classroom: room([narrow, ...sides(900, 1300)]),
      findings: [{ messageKey: 'none', measured: 900 }],
    },
    {
      name: 'A08: alongside in a niche 760 deep, 1500 wide',
      classroom: room([shelf, ...sides(1500, 760), facing(800)].map((p, i) => ({ ...p, id: `p${i}` }))),
      findings: [{ messageKey: 'none' }],
    },
    {
      name: 'a sink for a wheelchair user',
      classroom: plainRoom({
        access: { wheelchair: true },
        room: { fixtures: [{ id: 'f1', kind: 'sink', x: 3000, y: 225, width: 600, depth: 450 }] },
        pieces: [block('k1', 2000, 1000, 2000, 300)],
      }),
      findings: [{ messageKey: 'none', subjects: ['f1'] }],
    },
  ],
  cannotTell: [
    {
      name: 'the walls cross',
      classroom: plainRoom({
        ...required,
        pieces: [shelf],
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
    { name: 'no accessible route is kept', classroom: room([shelf, facing(500)], {}) },
    { name: 'no front', classroom: room([]) },
  ],
});
