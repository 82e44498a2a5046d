import { work } from '#model/rules/places/work.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';
import { testRule } from '#tests/support/ruleTester.ts';

// The plain room has 30 m²; its mats of 1.2 x 0.75 are 0.9 m² each, so 33 mats at the very most.
const room = (count: number, change: PlainRoomChange = {}) =>
  plainRoom({ children: { groups: [{ id: 'g1', fromMonths: 36, toMonths: 48, count }] }, ...change });
const table = (seats: number) => ({
  id: 't1',
  kind: 'table' as const,
  x: 3000,
  y: 2500,
  width: 1200,
  depth: 600,
  seatSides: { front: seats },
});
const crossed = [
  { id: 'c1', x: 0, y: 0 },
  { id: 'c2', x: 6000, y: 5000 },
  { id: 'c3', x: 6000, y: 0 },
  { id: 'c4', x: 0, y: 5000 },
];
/** Mats as large as the room: none fits beside anything. */
const huge = { floorWork: { mat: { width: 6000, depth: 6000 } } };

testRule(work, {
  fine: [
    { name: 'seats alone', classroom: room(4, { pieces: [table(4)], ...huge }) },
    {
      name: 'a free seat counts',
      classroom: room(5, { pieces: [table(4), { id: 'c1', kind: 'seat', x: 500, y: 3000, width: 300, depth: 300 }], ...huge }),
    },
    {
      name: 'half a place for each child',
      classroom: room(8, { pieces: [table(4)], ...huge, options: { 'places/work': { perChild: 0.5 } } }),
    },
  ],
  problem: [
    {
      name: 'more children than seats and mats can be',
      classroom: room(40, { pieces: [table(4)] }),
      findings: [{ messageKey: 'tooFew', severity: 'should', subjects: ['classroom'], needed: 40 }],
    },
    {
      name: 'no floor for a single mat',
      classroom: room(5, { pieces: [table(4)], ...huge }),
      findings: [{ messageKey: 'tooFew', measured: 4, needed: 5 }],
    },
  ],
  cannotTell: [
    {
      // Mats of 2.0 x 1.8: three were laid, the bound allows six.
      name: 'perhaps more mats than were found',
      classroom: room(7, { pieces: [table(2)], floorWork: { mat: { width: 2000, depth: 1800 } } }),
      findings: [{ messageKey: 'notProven', severity: 'should', needed: 7 }],
    },
    {
      name: 'walls that cross',
      classroom: room(5, { pieces: [table(4)], room: { corners: crossed } }),
      findings: [{ messageKey: 'noFloor', needed: 5, missing: ['mend the walls: they cross or do not close'] }],
    },
  ],
  doesNotApply: [{ name: 'no children', classroom: room(0) }],
});
