import { adults } from '#model/rules/places/adults.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';
import { testRule } from '#tests/support/ruleTester.ts';

// Ratios: England 1 to 5 at two, 1 to 8 from three, 1 to 13 with somebody qualified (C02); California a teacher 12, with
// an aide 15, with a qualified aide 18 (C10); Caring for Our Children by the youngest, groups of 14 at three (C21);
// Ireland's sessional service 1 to 11, at most 22 in a room (C07, C08).
const group = (fromMonths: number, count: number) => ({ id: `g${fromMonths}`, fromMonths, toMonths: fromMonths + 12, count });
const room = (ruleSet: string, groups: ReturnType<typeof group>[], there: PlainRoomChange['adults'], change: PlainRoomChange = {}) =>
  plainRoom({ ruleSet, children: { groups }, adults: there, ...change });
const lead = { role: 'lead', count: 1 } as const;
const over = { messageKey: 'over', severity: 'must', subjects: ['classroom'] } as const;

testRule(adults, {
  fine: [
    { name: 'England, 8 to one', classroom: room('england', [group(36, 8)], 1) },
    { name: 'England, shares add up: 5/5 + 8/8 = 2', classroom: room('england', [group(24, 5), group(36, 8)], 2) },
    { name: 'England, 13 with somebody qualified', classroom: room('england', [group(36, 13)], [{ role: 'qualified', count: 1 }]) },
    {
      name: 'California, a teacher and an aide',
      classroom: room('us-california', [group(36, 15)], [lead, { role: 'assistant', count: 1 }]),
    },
    { name: 'Ireland, a kind of service with a row', classroom: room('ireland', [group(36, 11)], 1, { service: 'sessional' }) },
  ],
  problem: [
    { name: 'England, 9 to one', classroom: room('england', [group(36, 9)], 1), findings: [{ ...over, measured: 8, needed: 9 }] },
    {
      name: 'England, 6/5 + 8/8 is more than 2',
      classroom: room('england', [group(24, 6), group(36, 8)], 2),
      findings: [{ ...over, measured: 12, needed: 14 }],
    },
    {
      name: 'California, sixteen with an aide who is not qualified',
      classroom: room('us-california', [group(36, 16)], [lead, { role: 'assistant', count: 1 }]),
      findings: [{ ...over, measured: 15, needed: 16 }],
    },
    {
      name: 'California, aides without a teacher',
      classroom: room('us-california', [group(36, 2)], [{ role: 'assistant', count: 2 }]),
      findings: [{ ...over, measured: 0, needed: 2 }],
    },
    {
      name: 'later in the year, the first date alone',
      classroom: room('england', [group(36, 8)], 1, {
        enrolment: [
          { from: '2027-04-01', groups: [{ fromMonths: 36, toMonths: 48, count: 10 }] },
          { from: '2027-01-01', groups: [{ fromMonths: 36, toMonths: 48, count: 9 }] },
        ],
      }),
      findings: [{ messageKey: 'later', severity: 'must', measured: 8, needed: 9 }],
    },
    {
      name: 'Caring for Our Children, adults enough for too large a group',
      classroom: room('us-cfoc', [group(36, 15)], 3),
      findings: [{ messageKey: 'group', severity: 'must', measured: 15, needed: 14 }],
    },
    {
      name: 'Ireland, more than 22 in a room',
      classroom: room('ireland', [group(36, 23)], 3, { service: 'sessional' }),
      findings: [{ messageKey: 'group', measured: 23, needed: 22 }],
    },
  ],
  cannotTell: [
    {
      name: 'no adults entered',
      classroom: room('england', [group(36, 8)], []),
      findings: [{ messageKey: 'noAdults', severity: 'must', missing: ['give the adults who work in the room, and their roles'] }],
    },
    {
      name: 'Ireland without a kind of service',
      classroom: room('ireland', [group(36, 8)], 1),
      findings: [{ messageKey: 'noService', severity: 'must' }],
    },
  ],
  doesNotApply: [
    { name: 'a rule set without a ratio', classroom: room('us-massachusetts', [group(36, 40)], 1) },
    { name: 'no children', classroom: room('england', [], 1) },
  ],
});
