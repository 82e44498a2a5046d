import { area } from '#model/rules/places/area.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';
import { testRule } from '#tests/support/ruleTester.ts';

// The plain room has 6 x 5 = 30 m²; its door swings out.
const group = (count: number, fromMonths = 36) => ({ id: `g${fromMonths}`, fromMonths, toMonths: fromMonths + 12, count });
const room = (ruleSet: string, count: number, change: PlainRoomChange = {}) =>
  plainRoom({ ruleSet, children: { groups: [group(count)] }, ...change });
const zone = (kind: 'passage' | 'walkway' | 'toilet' | 'cots', x: number, y: number, w: number, d: number, id: string = kind) => ({
  id,
  kind,
  outline: [
    [x, y],
    [x + w, y],
    [x + w, y + d],
    [x, y + d],
  ] as [number, number][],
});
const shelf = (id: string, x: number, y: number, change: object = {}) => ({
  id,
  kind: 'shelf' as const,
  x,
  y,
  width: 2000,
  depth: 500,
  ...change,
});
const crossed = [
  { id: 'c1', x: 0, y: 0 },
  { id: 'c2', x: 6000, y: 5000 },
  { id: 'c3', x: 6000, y: 0 },
  { id: 'c4', x: 0, y: 5000 },
];

testRule(area, {
  fine: [
    { name: 'England, 13 x 2.3 = 29.9 of 30', classroom: room('england', 13) },
    { name: 'exactly enough', classroom: room('new-zealand', 12) },
    {
      name: 'California: tables count',
      classroom: room('us-california', 9, { pieces: [{ id: 't1', kind: 'table', x: 3000, y: 2500, width: 1800, depth: 900 }] }),
    },
    { name: 'Washington: open shelves for children count', classroom: room('us-washington', 9, { pieces: [shelf('s1', 3000, 300)] }) },
    { name: 'a silent text, where it changes nothing', classroom: room('england', 12, { pieces: [shelf('s1', 3000, 300)] }) },
    {
      name: 'a silent text, answered by the class',
      classroom: room('england', 13, { pieces: [shelf('s1', 3000, 300)], asked: { open_shelf_for_children: 'count' } }),
    },
    {
      name: 'another room added before rounding down',
      classroom: room('england', 14, { room: { otherRooms: [{ name: 'cloakroom', area: 2.2 }] } }),
    },
    {
      name: 'a column and a partition on one spot are taken off once',
      classroom: room('new-zealand', 11, {
        room: {
          fixtures: [1, 2].map((n) => ({
            id: `f${n}`,
            kind: n === 1 ? ('column' as const) : ('partition' as const),
            x: 3000,
            y: 2500,
            width: 1500,
            depth: 1600,
          })),
        },
      }),
    },
    { name: 'Ireland, sessional', classroom: room('ireland', 16, { service: 'sessional' }) },
    { name: 'the class’s own figure', classroom: room('own', 10, { options: { 'places/area': { perChild: 3 } } }) },
    { name: 'more later, but enough', classroom: room('england', 10, { enrolment: [{ from: '2027-04-01', groups: [group(13)] }] }) },
  ],
  problem: [
    {
      name: 'England, 14 x 2.3 = 32.2 of 30',
      classroom: room('england', 14),
      findings: [{ messageKey: 'over', severity: 'must', subjects: ['classroom'], measured: 30, needed: 32.2 }],
    },
    {
      name: 'two-year-olds need more',
      classroom: room('england', 13, { children: { groups: [group(13, 24)] } }),
      findings: [{ messageKey: 'over', measured: 30, needed: 32.5 }],
    },
    {
      name: 'California: open shelves are taken off',
      classroom: room('us-california', 9, { pieces: [shelf('s1', 3000, 300)] }),
      findings: [{ messageKey: 'over', measured: 29, needed: 29.26 }],
    },
    {
      name: 'overlapping shelves are taken off once, and only inside the walls',
      classroom: room('us-california', 9, { pieces: [shelf('s1', 3000, 0), shelf('s2', 4000, 250)] }),
      // Inside: 2000 x 250 of the first; the second adds 1000 x 250 beside it and 2000 x 250 below.
      findings: [{ messageKey: 'over', measured: 28.75, needed: 29.26 }],
    },
    {
      name: 'a toilet and a passage, whatever the rest says',
      classroom: room('england', 12, { room: { zones: [zone('toilet', 0, 0, 1000, 1500), zone('passage', 1000, 0, 1000, 2000)] } }),
      findings: [{ messageKey: 'over', measured: 26.5, needed: 27.6 }],
    },
    {
      name: 'the class answers that shelves are taken off',
      classroom: room('england', 13, { pieces: [shelf('s1', 3000, 300)], asked: { open_shelf_for_children: 'deduct' } }),
      findings: [{ messageKey: 'over', measured: 29, needed: 29.9 }],
    },
    {
      name: 'rounded room by room it is one fewer',
      classroom: room('england', 15, { room: { otherRooms: [{ name: 'cloakroom', area: 2.2 }] } }),
      findings: [{ messageKey: 'over', measured: 32.2, needed: 34.5 }],
    },
    {
      name: 'ages beyond the table, by its last row',
      classroom: room('england', 14, { children: { groups: [group(14, 84)] } }),
      findings: [{ messageKey: 'over', needed: 32.2 }],
    },
    {
      name: 'a guideline',
      classroom: room('us-cfoc', 8),
      findings: [{ messageKey: 'over', measured: 30, needed: 31.22 }],
    },
    {
      name: 'a figure from memory',
      classroom: room('us-texas', 11),
      findings: [{ messageKey: 'over', measured: 30, needed: 30.66 }],
    },
    {
      name: 'too many from a date on, the first such date, and the one with the most',
      classroom: room('england', 10, {
        enrolment: [
          { from: '2027-09-01', groups: [group(15)] },
          { from: '2027-04-01', groups: [group(14)] },
          { from: '2027-01-01', groups: [group(13)] },
        ],
      }),
      findings: [{ messageKey: 'laterMore', severity: 'must', measured: 30, needed: 32.2 }],
    },
    {
      name: 'too many from a date on, and fewer after it',
      classroom: room('england', 10, {
        enrolment: [
          { from: '2027-09-01', groups: [group(13)] },
          { from: '2027-04-01', groups: [group(14)] },
        ],
      }),
      findings: [{ messageKey: 'later', severity: 'must', measured: 30, needed: 32.2 }],
    },
  ],
  cannotTell: [
    {
      name: 'the text is silent and it matters',
      classroom: room('england', 13, { pieces: [shelf('s1', 3000, 300)], room: { zones: [zone('cots', 0, 4000, 1000, 1000)] } }),
      findings: [
        {
          messageKey: 'depends',
          measured: 28,
          needed: 29.9,
          missing: [
            'ask your licensing authority whether the area of the cots counts',
            'ask your licensing authority whether the floor under open shelves for children counts',
          ],
        },
      ],
    },
    {
      name: 'a walkway "depends" in Australia',
      classroom: room('australia', 9, { room: { zones: [zone('walkway', 0, 0, 1000, 3000)] } }),
      findings: [
        {
          messageKey: 'depends',
          measured: 27,
          needed: 29.25,
          missing: ['ask your licensing authority whether a walkway inside the room counts'],
        },
      ],
    },
    {
      name: 'later it will matter',
      classroom: room('england', 10, { pieces: [shelf('s1', 3000, 300)], enrolment: [{ from: '2027-04-01', groups: [group(13)] }] }),
      findings: [{ messageKey: 'laterDepends' }],
    },
    {
      name: 'Ireland without the kind of service',
      classroom: room('ireland', 10),
      findings: [{ messageKey: 'notTold', missing: ['say what kind of service it is: day-care, sessional, drop-in'] }],
    },
    {
      name: 'no rule chosen',
      classroom: room('own', 10),
      findings: [{ messageKey: 'notTold', missing: ['choose whose rule counts, or set your own floor per child'] }],
    },
    {
      name: 'a rule of an unknown name',
      classroom: room('atlantis', 10),
      findings: [{ messageKey: 'notTold', missing: ['choose a rule set: "atlantis" is none of those known'] }],
    },
    {
      name: 'no children entered',
      classroom: room('england', 0),
      findings: [{ messageKey: 'notTold', missing: ['give the ages and the number of the children'] }],
    },
    {
      name: 'walls that cross',
      classroom: room('england', 10, { room: { corners: crossed } }),
      findings: [{ messageKey: 'notTold', missing: ['mend the walls: they cross or do not close'] }],
    },
  ],
});
