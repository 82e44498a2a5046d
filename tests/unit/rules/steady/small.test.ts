import { small } from '#model/rules/steady/small.ts';
import type { ClassroomInput } from '#model/schema/types.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';
import { testRule } from '#tests/support/ruleTester.ts';
import { placed, shelf, tray } from '#tests/support/shelfRoom.ts';

type MaterialInput = NonNullable<ClassroomInput['materials']>[number];

const ages = (fromMonths: number, count = 4) => ({
  groups: [{ id: 'g1', name: 'youngest', fromMonths, toMonths: fromMonths + 12, count }],
});
const room = (materials: MaterialInput[], change: PlainRoomChange = {}) =>
  plainRoom({
    children: ages(30),
    pieces: [shelf('s')],
    materials,
    placements: placed({ 's-1': materials.map(({ id }) => id) }),
    ...change,
  });
const bean = tray('bean', { smallest: [8, 8, 15] });
const jug = tray('jug', { smallest: [60, 70, 90] });
const die = tray('die', { smallest: [30, 30, 30] });

testRule(small, {
  fine: [
    { name: 'too wide', classroom: room([jug]) },
    { name: 'longer than the cylinder anywhere', classroom: room([tray('rod', { smallest: [5, 5, 66] })]) },
    { name: 'only the greatest extent, and that is longer', classroom: room([tray('rod', { smallest: 70 })]) },
    { name: 'not even the round body fits', classroom: room([tray('cube', { smallest: [40, 40, 40], smallParts: true })]) },
    { name: 'its shape decides, and somebody tried', classroom: room([{ ...die, smallParts: false }]) },
    { name: 'marked as having none', classroom: room([tray('cloth', { smallParts: false })]) },
    {
      name: 'what has small parts is on the shelf for adults',
      classroom: room([jug, bean], {
        pieces: [shelf('s'), shelf('a', { x: 4500, for: 'adults' })],
        placements: placed({ 's-1': ['jug'], 'a-1': ['bean'] }),
      }),
    },
  ],
  problem: [
    {
      name: 'a bean, whatever was ticked',
      classroom: room([{ ...bean, smallParts: false }, jug]),
      findings: [{ messageKey: 'fits', severity: 'must', subjects: ['s', 'bean'] }],
    },
    {
      name: 'only the greatest extent, and a cube of it fits',
      classroom: room([tray('bead', { smallest: 20 })]),
      findings: [{ messageKey: 'fits', severity: 'must' }],
    },
    {
      name: 'it fits only lying askew',
      classroom: room([tray('straw', { smallest: [1, 1, 60] })]),
      findings: [{ messageKey: 'fits', severity: 'must' }],
    },
    {
      name: 'one finding a shelf',
      classroom: room([bean, tray('pea', { smallest: 7 })]),
      findings: [{ messageKey: 'fits', subjects: ['s', 'bean', 'pea'] }],
    },
    {
      name: 'on the floor',
      classroom: room([bean], { placements: [{ material: 'bean', piece: null, x: 3000, y: 3000 }] }),
      findings: [{ messageKey: 'fits', subjects: ['floor', 'bean'] }],
    },
    {
      name: 'only marked',
      classroom: room([tray('tongs', { smallParts: true })]),
      findings: [{ messageKey: 'flagged', severity: 'should' }],
    },
    {
      name: 'its shape decides, and it is marked',
      classroom: room([{ ...die, smallParts: true }]),
      findings: [{ messageKey: 'flagged', severity: 'should' }],
    },
    {
      name: 'a class that asks up to four years',
      classroom: room([bean], { children: ages(36), options: { 'steady/small': { underMonths: 48 } } }),
      findings: [{ messageKey: 'fits', severity: 'must' }],
    },
  ],
  cannotTell: [
    {
      name: 'its shape decides',
      classroom: room([die]),
      findings: [
        {
          messageKey: 'doubtful',
          severity: 'must',
          missing: ['try the real cylinder with the smallest piece of die, and mark what you found'],
        },
      ],
    },
    {
      name: 'a greatest extent between',
      classroom: room([tray('block', { smallest: 40 })]),
      findings: [{ messageKey: 'doubtful' }],
    },
    {
      name: 'nothing known of two things: one finding',
      classroom: room([tray('a'), tray('b')]),
      findings: [
        { messageKey: 'notKnown', missing: ['measure the smallest loose piece of a and b, or say whether there are small parts'] },
      ],
    },
    {
      name: 'no ages',
      classroom: room([bean], { children: { groups: [] } }),
      findings: [{ messageKey: 'noAges', missing: ['give the ages of the children'] }],
    },
  ],
  doesNotApply: [
    { name: 'all are three', classroom: room([bean], { children: ages(36) }) },
    { name: 'nothing stands anywhere', classroom: room([]) },
  ],
});
