import { see } from '#model/rules/reach/see.ts';
import type { ClassroomInput } from '#model/schema/types.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';
import { testRule } from '#tests/support/ruleTester.ts';

type Piece = NonNullable<PlainRoomChange['pieces']>[number];
type Material = NonNullable<ClassroomInput['materials']>[number];
type Placement = NonNullable<PlainRoomChange['placements']>[number];

// The smallest child: eye at 778.5, stand-off 102.5. Open boards are seen into up to 778.5 - tan 15° x (102.5 + d).
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
    { id: 'l1', surface: 640 },
    { id: 'l2', surface: 350 },
    { id: 'l3', surface: 60 },
  ],
  ...change,
});
const tray = (change: Partial<Material> = {}): Material => ({ id: 'm1', name: 'Rods', width: 200, depth: 200, height: 50, ...change });
const on = (level: string | null, change: Partial<Placement> = {}): Placement => ({
  material: 'm1',
  piece: 's1',
  level,
  x: 100,
  ...change,
});
/** A cupboard whose back is `away` mm before the shelf's front. */
const before = (away: number): Piece => ({ id: 'x1', kind: 'other', x: 3000, y: 360 + away + 200, width: 2000, depth: 400, height: 900 });

const room = (
  level: string | null,
  change: PlainRoomChange & { piece?: Partial<Piece>; thing?: Partial<Material>; at?: Partial<Placement>; others?: Piece[] } = {},
) => {
  const { piece, thing, at, others = [], ...rest } = change;
  return plainRoom({ pieces: [shelf(piece), ...others], materials: [tray(thing)], placements: [on(level, at)], ...rest });
};
const at = (surface: number, clear: number | null = null): Partial<Piece> => ({ levels: [{ id: 'l1', surface, clear }] });
const low = [
  { id: 'l1', surface: 560, clear: 60 },
  { id: 'l2', surface: 60 },
];
const groups = (fromMonths: number) => [{ id: 'g1', name: 'group', fromMonths, toMonths: fromMonths + 12, count: 8 }];
const top = [
  { id: 'l1', surface: 1000 },
  { id: 'l2', surface: 350 },
];

testRule(see, {
  fine: [
    { name: 'an open board below the sight line', classroom: room('l1') },
    { name: 'the lowest board, from further back', classroom: room('l3') },
    { name: 'the lowest board with 400 of floor before it', classroom: room('l3', { others: [before(400)] }) },
    { name: 'a narrow slot with floor to step back', classroom: room('l1', { piece: { levels: low } }) },
    { name: 'a high board for older children', classroom: room('l1', { piece: at(740), thing: { fromMonths: 60 } }) },
    { name: 'a class of six-year-olds', classroom: room('l1', { piece: at(850), children: { groups: groups(72) } }) },
    {
      name: 'a measured child of 1.20 m',
      classroom: room('l1', { piece: at(850), children: { groups: groups(36), smallestStature: 1200 } }),
    },
    { name: 'a class that takes flatter sight lines', classroom: room('l1', { piece: at(730), options: { 'reach/see': { angle: 5 } } }) },
  ],
  problem: [
    {
      name: 'a board above the sight line comes down',
      classroom: room('l1', { piece: at(760) }),
      findings: [
        {
          messageKey: 'tooHigh',
          severity: 'should',
          subjects: ['s1'],
          measured: 760,
          needed: 724.22,
          fix: 'gone',
          says: 'the smallest child (a girl of 3 years 0 months, smaller than 95 of 100)',
        },
      ],
    },
    {
      name: 'the top of the shelf: the tray goes down',
      classroom: room('l1', { piece: { levels: top } }),
      findings: [{ messageKey: 'tooHigh', measured: 1000, fix: 'gone' }],
    },
    {
      name: 'a narrow slot without floor to step back',
      classroom: room('l1', { piece: { levels: low }, thing: { height: 30 }, others: [before(150)] }),
      findings: [{ messageKey: 'hidden', subjects: ['s1'], fix: 'gone' }],
    },
    {
      name: 'a narrow slot at the foot: the tray comes forward',
      classroom: room('l2', {
        piece: {
          levels: [
            { id: 'l1', surface: 640 },
            { id: 'l2', surface: 20, clear: 40 },
          ],
        },
        at: { y: 120 },
        thing: { depth: 190 },
      }),
      findings: [{ messageKey: 'hidden', fix: 'gone' }],
    },
    {
      name: 'a class whose children do not step back',
      classroom: room('l1', { piece: { levels: low }, options: { 'reach/see': { stepBack: 200 } } }),
      findings: [{ messageKey: 'hidden', fix: 'gone' }],
    },
    {
      name: 'a thing for older children, still too high',
      classroom: room('l1', { piece: at(900), thing: { fromMonths: 48 } }),
      findings: [{ messageKey: 'tooHigh', measured: 900, fix: 'gone' }],
    },
    {
      name: 'a front against the wall',
      classroom: room('l1', { piece: { y: 4830 } }),
      findings: [{ messageKey: 'noFloor' }],
    },
  ],
  cannotTell: [
    {
      name: 'a tray on a shelf of unknown height',
      classroom: room(null, { piece: { height: null, levels: [] } }),
      findings: [{ messageKey: 'notMeasured', missing: ['give Sensorial A its height'] }],
    },
    {
      name: 'a thing without a size',
      classroom: room('l1', { thing: { width: null, depth: null } }),
      findings: [{ messageKey: 'notMeasured', severity: 'should', missing: ['give Rods its width and depth'] }],
    },
    {
      name: 'walls that cross',
      classroom: room('l1', { room: { corners: crossed() } }),
      findings: [{ messageKey: 'notMeasured', missing: ['mend the walls: they cross, so the floor before the shelf is not known'] }],
    },
    {
      name: 'no children entered',
      classroom: room('l1', { children: { groups: [] } }),
      findings: [{ messageKey: 'noChild', missing: ['give the ages of the children'] }],
    },
  ],
  doesNotApply: [{ name: 'an empty room', classroom: plainRoom() }],
});

function crossed() {
  return [
    { id: 'c1', x: 0, y: 0 },
    { id: 'c2', x: 6000, y: 5000 },
    { id: 'c3', x: 6000, y: 0 },
    { id: 'c4', x: 0, y: 5000 },
  ];
}
