import { take } from '#model/rules/reach/take.ts';
import type { ClassroomInput } from '#model/schema/types.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';
import { testRule } from '#tests/support/ruleTester.ts';

type Piece = NonNullable<PlainRoomChange['pieces']>[number];
type Material = NonNullable<ClassroomInput['materials']>[number];
type Placement = NonNullable<PlainRoomChange['placements']>[number];

// The smallest child is a girl of 36 months at percentile 5: shoulder 660.5, arm 315.5, lift 318.3, stand-off 102.5
// (the worked example A of the anthropometry notes, reach at the percentile).
const shelf = (change: Partial<Piece> = {}): Piece => ({
  id: 's1',
  kind: 'shelf',
  name: 'Sensorial A',
  x: 3000,
  y: 200,
  width: 1200,
  depth: 320,
  height: 1000,
  levels: [
    { id: 'l1', surface: 900 },
    { id: 'l2', surface: 500 },
    { id: 'l3', surface: 60 },
  ],
  ...change,
});
const tray = (change: Partial<Material> = {}): Material => ({ id: 'm1', name: 'Rods', width: 180, depth: 200, height: 100, ...change });
const on = (level: string | null, change: Partial<Placement> = {}): Placement => ({
  material: 'm1',
  piece: 's1',
  level,
  x: 100,
  ...change,
});

const room = (
  level: string | null,
  change: PlainRoomChange & { piece?: Partial<Piece>; thing?: Partial<Material>; at?: Partial<Placement> } = {},
) => {
  const { piece, thing, at, ...rest } = change;
  return plainRoom({ pieces: [shelf(piece)], materials: [tray(thing)], placements: [on(level, at)], ...rest });
};
const topBoard = [
  { id: 'l1', surface: 1000 },
  { id: 'l2', surface: 500 },
];

testRule(take, {
  fine: [
    { name: 'a tray below the shoulder', classroom: room('l2') },
    { name: 'a tray on the bottom board: she stoops', classroom: room('l3') },
    { name: 'above the shoulder, within the arm', classroom: room('l1', { piece: { levels: [{ id: 'l1', surface: 850 }] } }) },
    { name: 'a wide tray is taken by its near edge', classroom: room('l2', { thing: { width: 480, depth: 460 }, piece: { depth: 500 } }) },
    {
      name: 'a deep thing where her toes go under the shelf',
      classroom: room('l2', { thing: { width: 400, depth: 460 }, piece: { depth: 500, toeRecess: 60 } }),
    },
    { name: 'an unknown height that changes nothing', classroom: room('l2', { thing: { height: null } }) },
    { name: 'a measured child of 1.10 m', classroom: room('l1', { children: children(36, { smallestStature: 1100 }) }) },
    { name: 'a class of five-year-olds', classroom: room('l1', { children: children(60) }) },
    {
      name: 'nothing on the floor is judged here',
      classroom: plainRoom({
        pieces: [shelf()],
        materials: [tray(), tray({ id: 'm2' })],
        placements: [on('l2'), { material: 'm2', x: 100, y: 900 }],
      }),
    },
  ],
  problem: [
    {
      name: 'a board above her reach comes down',
      classroom: room('l1'),
      findings: [
        {
          messageKey: 'tooHigh',
          severity: 'must',
          subjects: ['s1'],
          measured: 950,
          needed: 904.7,
          fix: 'gone',
          says: 'the smallest child (a girl of 3 years 0 months, smaller than 95 of 100)',
        },
      ],
    },
    {
      name: 'one finding a board, and the tray goes down where the board is the top',
      classroom: plainRoom({
        pieces: [shelf({ levels: topBoard })],
        materials: [tray(), tray({ id: 'm2', name: 'Cubes', height: 60 }), tray({ id: 'm3', name: 'Jug' })],
        placements: [on('l1'), on('l1', { material: 'm2', x: 400 }), on('l2', { material: 'm3', x: 0 })],
      }),
      findings: [{ messageKey: 'tooHigh', measured: 1050, fix: 'gone' }],
    },
    {
      name: 'no room below: no fix',
      classroom: plainRoom({
        pieces: [shelf({ levels: topBoard })],
        materials: [tray(), tray({ id: 'm2', name: 'Map', width: 1100 })],
        placements: [on('l1'), on('l2', { material: 'm2', x: 20 })],
      }),
      findings: [{ messageKey: 'tooHigh', measured: 1050 }],
    },
    {
      name: 'deeper than her arm, on any board',
      classroom: room('l2', { thing: { width: 400, depth: 460 }, piece: { depth: 500 } }),
      findings: [{ messageKey: 'tooDeep', measured: 230, needed: 213.08 }],
    },
    {
      name: 'pushed back: pulled forward',
      classroom: room('l2', { at: { y: 115 } }),
      findings: [{ messageKey: 'tooDeep', measured: 215, fix: 'gone' }],
    },
    {
      name: 'out of reach whatever the size',
      classroom: room('l1', { thing: { width: null, depth: null, height: null }, piece: { levels: topBoard } }),
      findings: [{ messageKey: 'tooHigh', measured: 1000 }],
    },
    {
      name: 'a class that wants reach to spare',
      classroom: room('l1', { piece: { levels: [{ id: 'l1', surface: 850 }] }, options: { 'reach/take': { spare: 60 } } }),
      findings: [{ messageKey: 'tooHigh', measured: 900, needed: 844.7, fix: 'gone' }],
    },
    {
      name: 'a small child, as measured',
      classroom: room('l1', { piece: { levels: [{ id: 'l1', surface: 850 }] }, children: children(36, { smallestStature: 800 }) }),
      findings: [{ messageKey: 'tooHigh', fix: 'gone', says: 'the smallest child (as measured)' }],
    },
  ],
  cannotTell: [
    {
      name: 'a tray on a shelf of unknown height',
      classroom: room(null, { piece: { height: null, levels: [] } }),
      findings: [{ messageKey: 'notMeasured', severity: 'must', missing: ['give Sensorial A its height'] }],
    },
    {
      name: 'a thing without a size on a board near the limit',
      classroom: room('l1', { thing: { depth: null, height: null }, piece: { levels: [{ id: 'l1', surface: 890 }] } }),
      findings: [{ messageKey: 'notMeasured', missing: ['give Rods its depth and height'] }],
    },
    {
      name: 'no children entered',
      classroom: room('l2', { children: { groups: [] } }),
      findings: [{ messageKey: 'noChild', missing: ['give the ages of the children'] }],
    },
    {
      name: 'children younger than any table',
      classroom: room('l2', { children: children(18) }),
      findings: [
        {
          messageKey: 'noChild',
          missing: ['measure the reach of the youngest child yourselves: no table covers 18 months, only 24 and older'],
        },
      ],
    },
  ],
  doesNotApply: [
    { name: 'an empty room', classroom: plainRoom() },
    { name: 'a shelf for adults only', classroom: room('l1', { piece: { for: 'adults' } }) },
  ],
});

function children(
  fromMonths: number,
  rest: Partial<NonNullable<PlainRoomChange['children']>> = {},
): NonNullable<PlainRoomChange['children']> {
  return { groups: [{ id: 'g1', name: 'group', fromMonths, toMonths: fromMonths + 12, count: 8 }], ...rest };
}
