import { doors } from '#model/rules/exit/doors.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';
import { testRule } from '#tests/support/ruleTester.ts';

// The International Building Code (B01, B02, B04, B05, B07) and Approved Document B (B17, B18, the last from memory).
type Opening = NonNullable<NonNullable<PlainRoomChange['room']>['openings']>[number];
const d1: Opening = { id: 'd1', kind: 'door', from: 'c1', offset: 400, width: 1000, clear: 850, swing: 'out-left', exit: true };
const d2: Opening = { ...d1, id: 'd2', from: 'c3' };
const room = (openings: Opening[], change: PlainRoomChange) => plainRoom({ ...change, room: { openings } });
const children = (count: number, fromMonths = 36) => ({ children: { groups: [{ id: 'g1', fromMonths, toMonths: 60, count }] } });
const england = { exitRules: 'england-adb' } as const;
const ibc = { exitRules: 'us-ibc' } as const;
/** 900 and 985 sq ft, as worked examples W16 and W17 have them: 45 persons, and 49.25, raised to 50. */
const square = (squareFeet: number, change: PlainRoomChange = {}) => {
  const side = Math.sqrt(squareFeet * 304.8 ** 2);
  return plainRoom({
    ...ibc,
    ...change,
    room: {
      corners: (
        [
          [0, 0],
          [side, 0],
          [side, side],
          [0, side],
        ] as const
      ).map(([x, y], i) => ({ id: `c${i + 1}`, x, y })),
      openings: [d1],
      ...change.room,
    },
  });
};
const few = { messageKey: 'few', severity: 'should', subjects: ['room'] } as const;

testRule(doors, {
  fine: [
    { name: 'B17: 750 clear for 60 persons', classroom: room([{ ...d1, clear: 750 }], { ...england, ...children(58) }) },
    { name: 'B07: 32 in', classroom: room([{ ...d1, clear: 812.8 }], ibc) },
    { name: 'W16: 900 sq ft are 45 persons, one exit does', classroom: square(900) },
    { name: 'two exits for 98 persons', classroom: room([d1, d2], { ...ibc, ...children(96) }) },
    { name: 'a passage is as clear as it is wide', classroom: room([{ ...d1, kind: 'passage', clear: null, width: 820 }], ibc) },
    {
      name: 'a toilet and a closet in the corner are no net floor',
      classroom: square(985, {
        room: {
          zones: [
            {
              id: 'z1',
              kind: 'toilet',
              outline: [
                [0, 0],
                [1000, 0],
                [1000, 1000],
                [0, 1000],
              ],
            },
          ],
        },
      }),
    },
  ],
  problem: [
    {
      name: 'B17: 740 clear',
      classroom: room([{ ...d1, clear: 740 }], england),
      findings: [{ messageKey: 'narrow', severity: 'should', subjects: ['d1'], measured: 740, needed: 750 }],
    },
    {
      name: 'B17: 61 persons need 850; B18: and two exits',
      classroom: room([{ ...d1, clear: 800 }], { ...england, ...children(59) }),
      findings: [few, { messageKey: 'narrow', measured: 800, needed: 850 }],
    },
    {
      name: 'B18: more than 600 need three',
      classroom: room(
        [
          { ...d1, width: 4000, clear: 4000 },
          { ...d2, width: 4000, clear: 4000 },
        ],
        { ...england, ...children(700) },
      ),
      findings: [few],
    },
    { name: 'W17: 985 sq ft are 50 persons when raised: a second exit', classroom: square(985), findings: [few] },
    {
      name: 'W19: 480 persons share two exits, 48 in each',
      classroom: room([{ ...d1, clear: 1000, width: 1100 }, d2], { ...ibc, ...children(478) }),
      findings: [
        { messageKey: 'narrow', subjects: ['d1'], measured: 1000, needed: 240 * 5.1 },
        { messageKey: 'narrow', subjects: ['d2'], measured: 850, needed: 240 * 5.1 },
      ],
    },
    {
      name: 'B02: a child under 30 months makes it day care, but 35 sq ft each are fewer persons than are there',
      classroom: square(900, { ...children(60, 24) }),
      findings: [few],
    },
    {
      name: 'the class asks for two, of 900 each',
      classroom: room([d1], { ...england, options: { 'exit/doors': { width: 900, count: 2 } } }),
      findings: [few, { messageKey: 'narrow', measured: 850, needed: 900 }],
    },
  ],
  cannotTell: [
    {
      name: 'no rules chosen',
      classroom: room([d1], {}),
      findings: [{ messageKey: 'rules', severity: 'should', missing: ['whose rules count for the ways out'] }],
    },
    {
      name: 'no exit marked',
      classroom: room([{ ...d1, exit: false }], england),
      findings: [{ messageKey: 'exits', missing: ['which doors lead out of the building or to a safe way out'] }],
    },
    {
      name: 'the clear opening was not measured',
      classroom: room([{ ...d1, width: 780, clear: null }], england),
      findings: [
        { messageKey: 'notMeasured', subjects: ['d1'], needed: 750, missing: ['the clear opening of door d1 with its leaf at 90 degrees'] },
      ],
    },
    {
      name: 'a thick leaf',
      classroom: room([{ ...d1, width: 840, clear: null }], { ...england, options: { 'exit/doors': { leaf: 100 } } }),
      findings: [{ messageKey: 'notMeasured', needed: 750 }],
    },
  ],
});
