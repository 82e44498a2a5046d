import { turn } from '#model/rules/way/turn.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';
import { testRule } from '#tests/support/ruleTester.ts';

// ADA Standards for Accessible Design, 2010: 304.3.1 (A05), 304.3.2 (A06); W22 for the T's figures. The rooms are ours.
type Piece = NonNullable<PlainRoomChange['pieces']>[number];
const required = { access: { required: true } };
const block = (id: string, x: number, y: number, width: number, depth: number): Piece => ({
  id,
  kind: 'other',
  x: x + width / 2,
  y: y + depth / 2,
  width,
  depth,
});
/** A lane `wide` along the door's wall, nothing else. */
const lane = (wide: number): Piece[] => [block('k1', 0, wide, 6000, 5000 - wide)];
/** The same with a square recess `wide` by `wide` cut into what stands south of it. */
const tee = (lanes: number, stem: number, deep: number): Piece[] => [
  block('k1', 0, lanes, 2000, 5000 - lanes),
  block('k2', 2000 + stem, lanes, 4000 - stem, 5000 - lanes),
  block('k3', 2000, lanes + deep, stem, 5000 - lanes - deep),
];
const room = (pieces: Piece[], change: PlainRoomChange = required) => plainRoom({ ...change, pieces });
const openings = [{ id: 'd1', kind: 'passage', from: 'c1', offset: 400, width: 1200 } as const];

testRule(turn, {
  fine: [
    { name: 'an empty room', classroom: room([]) },
    { name: 'A05: a lane of 60 in', classroom: room(lane(1524)) },
    { name: 'A06, W22: a T of 36 in arms, 24 in beyond the arm', classroom: room(tee(914.4, 914.4, 609.6)) },
    { name: 'A06, as printed', classroom: room(tee(915, 915, 610)) },
    { name: 'a smaller circle set by the class', classroom: room(lane(1300), { access: { required: true, turning: 1300 } }) },
    {
      name: 'turned by 30 degrees with the walls',
      classroom: plainRoom({
        ...required,
        room: {
          corners: (
            [
              [0, 0],
              [3000, 1732.05],
              [2237.5, 3052.74],
              [-762.5, 1320.69],
            ] as const
          ).map(([x, y], i) => ({ id: `c${i + 1}`, x, y })),
          openings,
        },
      }),
    },
  ],
  problem: [
    {
      name: 'A05: a lane of 1500',
      classroom: room(lane(1500)),
      findings: [{ messageKey: 'none', severity: 'should', subjects: ['room'], needed: 1525 }],
    },
    { name: 'A06: the arms a little too narrow', classroom: room(tee(920, 913, 700)), findings: [{ messageKey: 'none' }] },
    { name: 'A06: the base a little too short', classroom: room(tee(920, 920, 600)), findings: [{ messageKey: 'none' }] },
    {
      name: 'A06: no T is wanted',
      classroom: room(tee(915, 915, 610), { ...required, options: { 'way/turn': { tee: false } } }),
      findings: [{ messageKey: 'noCircle', needed: 1525 }],
    },
    {
      name: 'a larger circle set by the class',
      classroom: room(lane(1600), { access: { wheelchair: true, turning: 1700 } }),
      findings: [{ messageKey: 'noCircle', needed: 1700 }],
    },
    {
      name: 'there is floor enough, but the route does not lead to it',
      classroom: room([block('k1', 0, 1200, 5200, 300)]),
      findings: [{ messageKey: 'none' }],
    },
  ],
  cannotTell: [
    {
      name: 'no door',
      classroom: plainRoom({ ...required, room: { openings: [] } }),
      findings: [{ messageKey: 'door', severity: 'should', missing: ['where the doors and passages are'] }],
    },
    {
      name: 'the walls cross',
      classroom: plainRoom({
        ...required,
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
      findings: [{ messageKey: 'walls', missing: ['walls that close and do not cross'] }],
    },
  ],
  doesNotApply: [{ name: 'no accessible route is kept', classroom: room(lane(1000), {}) }],
});
