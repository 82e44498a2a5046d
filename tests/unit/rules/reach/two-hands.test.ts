import { twoHands } from '#model/rules/reach/two-hands.ts';
import type { ClassroomInput } from '#model/schema/types.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';
import { testRule } from '#tests/support/ruleTester.ts';
import { placed, shelf, tray } from '#tests/support/shelfRoom.ts';

type MaterialInput = NonNullable<ClassroomInput['materials']>[number];

// The shoulder of the smallest child of the plain room (girl of 36 months, percentile 5) is at 661 mm: fixture
// model-outputs.csv, stored beside the reference tests; of one of 72 months at 825.
const two = tray('m1', { hands: 2 });
const high = [
  { id: 's-1', surface: 720 },
  { id: 's-2', surface: 300 },
];
const room = (
  materials: MaterialInput[],
  level = 's-1',
  change: PlainRoomChange & { levels?: typeof high; height?: number | null } = {},
) => {
  const { levels = high, height = 900, ...rest } = change;
  return plainRoom({
    pieces: [shelf('s', { height, levels })],
    materials,
    placements: placed({ [level]: materials.map(({ id }) => id) }),
    ...rest,
  });
};
const note = { messageKey: 'high', severity: 'note' } as const;

testRule(twoHands, {
  fine: [
    { name: 'below the shoulder', classroom: room([two], 's-2') },
    { name: 'one hand', classroom: room([tray('m1', { hands: 1 })]) },
    { name: 'meant for a child of six', classroom: room([tray('m1', { hands: 2, fromMonths: 72 })]) },
    { name: 'not known, but below the shoulder', classroom: room([tray('m1')], 's-2') },
    { name: 'a class that allows 100 mm', classroom: room([two], 's-1', { options: { 'reach/two-hands': { above: 100 } } }) },
  ],
  problem: [
    {
      name: 'above it: down to the lower board or the board down',
      classroom: room([two]),
      findings: [{ ...note, subjects: ['s'], measured: 720, fix: 'gone' }],
    },
    {
      name: 'one for each board',
      classroom: room([two, tray('m2', { hands: 2 }), tray('m3', { hands: 1 })]),
      findings: [
        {
          ...note,
          fix: 'gone',
          says: 'the smallest child meant to use it (a girl of 3 years 0 months, smaller than 95 of 100)',
        },
      ],
    },
    {
      name: 'a measured child',
      classroom: room([two], 's-2', {
        children: { groups: [{ id: 'g1', fromMonths: 36, toMonths: 48, count: 8 }], smallestStature: 800 },
        levels: [
          { id: 's-1', surface: 850 },
          { id: 's-2', surface: 640 },
        ],
      }),
      findings: [{ ...note, measured: 640, fix: 'gone', says: 'the smallest child (as measured)' }],
    },
    {
      name: 'beside one that nobody asked about',
      classroom: room([two, tray('m2')]),
      findings: [{ ...note, fix: 'gone' }, { messageKey: 'notKnown' }],
    },
  ],
  cannotTell: [
    {
      name: 'hands not known on a high board: one for the room',
      classroom: room([tray('m1'), tray('m2')]),
      findings: [
        { messageKey: 'notKnown', severity: 'note', subjects: ['classroom'], missing: ['say whether m1 and m2 take one hand or two'] },
      ],
    },
    {
      name: 'on the top of a shelf without a height',
      classroom: plainRoom({
        pieces: [{ id: 's', kind: 'shelf', name: 'A', x: 2500, y: 160, width: 1200, depth: 320 }],
        materials: [two],
        placements: [{ material: 'm1', piece: 's', x: 0 }],
      }),
      findings: [{ messageKey: 'noHeight', missing: ['give A its height'] }],
    },
    {
      name: 'no ages',
      classroom: room([two], 's-1', { children: { groups: [] } }),
      findings: [{ messageKey: 'noChild', missing: ['give the ages of the children'] }],
    },
  ],
  doesNotApply: [{ name: 'nothing on a shelf', classroom: room([]) }],
});
