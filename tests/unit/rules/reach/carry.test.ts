import { carry } from '#model/rules/reach/carry.ts';
import type { ClassroomInput } from '#model/schema/types.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';
import { testRule } from '#tests/support/ruleTester.ts';
import { placed, shelf, tray } from '#tests/support/shelfRoom.ts';

type MaterialInput = NonNullable<ClassroomInput['materials']>[number];

// CDC 2000, weight for age, girls, percentile 5: 11.6 kg at 36 months (printed 11.54 at 35.5 and 11.66 at 36.5 in the
// source's table, stored as tests/reference/data/cdc-wtage.csv), so a tenth is 1.16 kg and 15 % are 1.74 kg.
const room = (materials: MaterialInput[], change: PlainRoomChange = {}) =>
  plainRoom({ pieces: [shelf('s')], materials, placements: placed({ 's-2': materials.map(({ id }) => id) }), ...change });
const load = (id: string, heaviest: number, change: Partial<MaterialInput> = {}) => tray(id, { heaviest, ...change });
const missing = (what: string) => [`say of ${what} whether they are carried whole or in pieces, and weigh what is carried at once`];

testRule(carry, {
  fine: [
    { name: 'a kilogram', classroom: room([load('a', 1)]) },
    { name: 'carried whole: its mass', classroom: room([tray('a', { carried: 'whole', mass: 1 })]) },
    { name: 'it stays', classroom: room([load('a', 9, { carried: 'stays' })]) },
    { name: 'not known how it is carried, but light as a whole', classroom: room([tray('a', { mass: 1.1 })]) },
    { name: 'meant for a child of six', classroom: room([load('a', 1.5, { fromMonths: 72 })]) },
    {
      name: 'a class that starts at 14 and 20 %',
      classroom: room([load('a', 1.5)], { options: { 'reach/carry': { note: 0.14, should: 0.2 } } }),
    },
  ],
  problem: [
    {
      name: 'above a tenth: a note',
      classroom: room([load('a', 1.3)]),
      findings: [{ messageKey: 'heavy', severity: 'note', measured: 1.3, needed: 1.16 }],
    },
    {
      name: 'above 15 %',
      classroom: room([load('a', 2)]),
      findings: [
        {
          messageKey: 'heavy',
          severity: 'should',
          measured: 2,
          needed: 1.74,
          says: 'a girl of 3 years 0 months, smaller than 95 of 100',
        },
      ],
    },
    {
      name: 'one for each board, the heaviest counts',
      classroom: room([load('a', 1.3), load('b', 2.2)]),
      findings: [{ messageKey: 'heavy', severity: 'should', subjects: ['s'], measured: 2.2 }],
    },
    {
      name: 'carried whole, the mass an estimate',
      classroom: room([tray('a', { carried: 'whole', mass: 1.5, sure: { mass: 'estimate' } })]),
      findings: [{ messageKey: 'heavy', severity: 'note', measured: 1.5 }],
    },
    {
      name: 'beside something nobody weighed',
      classroom: room([load('a', 1.3), tray('b')]),
      findings: [{ messageKey: 'heavy' }, { messageKey: 'notKnown', missing: missing('b') }],
    },
  ],
  cannotTell: [
    {
      name: 'nothing known of two things: one finding',
      classroom: room([tray('a'), tray('b')]),
      findings: [{ messageKey: 'notKnown', severity: 'should', subjects: ['classroom'], missing: missing('a and b') }],
    },
    {
      name: 'in pieces, heavy as a whole',
      classroom: room([tray('a', { carried: 'pieces', mass: 4 })]),
      findings: [{ messageKey: 'notKnown' }],
    },
    {
      name: 'no ages',
      classroom: room([load('a', 1)], { children: { groups: [] } }),
      findings: [{ messageKey: 'noChild', missing: ['give the ages of the children'] }],
    },
  ],
  doesNotApply: [{ name: 'nothing on a shelf', classroom: room([]) }],
});
