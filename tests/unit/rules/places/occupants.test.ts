import { occupants } from '#model/rules/places/occupants.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';
import { testRule } from '#tests/support/ruleTester.ts';

// The plain room has 30 m²: 30 / 1.858 = 16.15 persons in a classroom (B01), 30 / 3.252 = 9.23 in day care (B02).
const room = (count: number, there: number, change: PlainRoomChange = {}, fromMonths = 36) =>
  plainRoom({
    ruleSet: 'us-california',
    adults: there,
    children: { groups: [{ id: 'g1', fromMonths, toMonths: fromMonths + 12, count }] },
    ...change,
  });
const crossed = [
  { id: 'c1', x: 0, y: 0 },
  { id: 'c2', x: 6000, y: 5000 },
  { id: 'c3', x: 6000, y: 0 },
  { id: 'c4', x: 0, y: 5000 },
];
const closet = {
  id: 'z1',
  kind: 'storage' as const,
  outline: [
    [0, 0],
    [2000, 0],
    [2000, 2000],
    [0, 2000],
  ] as [number, number][],
};
const note = { messageKey: 'more', severity: 'note' } as const;

testRule(occupants, {
  fine: [
    { name: '16 of 16.15', classroom: room(14, 2) },
    { name: 'day care: 9 of 9.23', classroom: room(8, 1, {}, 24) },
    { name: 'a child of just 30 months is none of day care', classroom: room(14, 2, {}, 30) },
    {
      name: 'furniture is not taken off',
      classroom: room(14, 1, { pieces: [{ id: 't1', kind: 'table', x: 3000, y: 2500, width: 3000, depth: 3000 }] }),
    },
    { name: 'a figure of the class', classroom: room(28, 2, { options: { 'places/occupants': { perPerson: 1 } }, ruleSet: 'england' }) },
  ],
  problem: [
    { name: '18 of 16.15', classroom: room(16, 2), findings: [{ ...note, measured: 18, needed: 17 }] },
    { name: 'day care: 11 of 9.23', classroom: room(10, 1, {}, 24), findings: [{ ...note, measured: 11, needed: 10 }] },
    {
      name: 'net of a closet: 26 / 1.858 = 13.99',
      classroom: room(13, 2, { room: { zones: [closet] } }),
      findings: [{ ...note, measured: 15, needed: 14 }],
    },
    { name: 'chosen for the exits', classroom: room(16, 2, { exitRules: 'us-ibc', ruleSet: 'own' }), findings: [note] },
  ],
  cannotTell: [
    {
      name: '17 of 16.15: whether a part counts is disputed',
      classroom: room(15, 2),
      findings: [
        {
          messageKey: 'rounding',
          severity: 'note',
          missing: ['ask your building authority whether a part of a person counts as one more'],
        },
      ],
    },
    { name: 'walls that cross', classroom: room(16, 2, { room: { corners: crossed } }), findings: [{ messageKey: 'walls' }] },
  ],
  doesNotApply: [
    { name: 'England', classroom: room(40, 2, { ruleSet: 'england' }) },
    { name: 'the exits go by another code', classroom: room(40, 2, { exitRules: 'england-adb' }) },
    { name: 'no children', classroom: room(0, 2) },
  ],
});
