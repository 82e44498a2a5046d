import { fixtures } from '#model/rules/places/fixtures.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';
import { testRule } from '#tests/support/ruleTester.ts';

// Figures: D10. California 15 to a toilet and a basin, Scotland 10 to a toilet (at least four by its sentence), England's
// 10 and 10 from memory.
const room = (ruleSet: string, count: number, toilets: number | null, basins: number | null, change: PlainRoomChange = {}) =>
  plainRoom({
    ruleSet,
    children: { groups: [{ id: 'g1', fromMonths: 36, toMonths: 48, count }] },
    room: { toilets, basins },
    ...change,
  });
const own = (perToilet: number | null, perBasin: number | null) => ({ options: { 'places/fixtures': { perToilet, perBasin } } });
const tooFew = { messageKey: 'tooFew', severity: 'should', subjects: ['room'] } as const;

testRule(fixtures, {
  fine: [
    { name: 'California, 15 to one', classroom: room('us-california', 15, 1, 1) },
    { name: 'Scotland asks for no basins', classroom: room('scotland', 40, 4, 0) },
    { name: 'Scotland, four in any case', classroom: room('scotland', 12, 4, null) },
    { name: 'a class with its own figures', classroom: room('us-massachusetts', 16, 2, 1, own(8, 16)) },
  ],
  problem: [
    { name: 'California, one more child', classroom: room('us-california', 16, 1, 2), findings: [{ ...tooFew, measured: 1, needed: 2 }] },
    {
      name: 'England, both, from memory',
      classroom: room('england', 24, 2, 2),
      findings: [
        { ...tooFew, measured: 2, needed: 3 },
        { ...tooFew, measured: 2, needed: 3 },
      ],
    },
    {
      name: 'Scotland, too few however one rounds',
      classroom: room('scotland', 35, 3, null),
      findings: [{ ...tooFew, measured: 3, needed: 4 }],
    },
    { name: 'none at all', classroom: room('us-texas', 2, 0, null), findings: [{ ...tooFew, measured: 0, needed: 1 }] },
    {
      name: 'the class’s own figure',
      classroom: room('us-california', 15, 1, 1, own(10, null)),
      findings: [{ ...tooFew, measured: 1, needed: 2 }],
    },
  ],
  cannotTell: [
    {
      name: 'nobody has counted',
      classroom: room('us-california', 15, null, null),
      findings: [
        { messageKey: 'notCounted', severity: 'should', missing: ['count the toilets for the children'] },
        { messageKey: 'notCounted', missing: ['count the basins for the children'] },
      ],
    },
    {
      name: 'Scotland, 34 children and 3 toilets',
      classroom: room('scotland', 34, 3, null),
      findings: [{ messageKey: 'depends', measured: 3, needed: 4 }],
    },
    {
      name: 'Scotland, few children',
      classroom: room('scotland', 8, 1, null),
      findings: [{ messageKey: 'depends', measured: 1, needed: 4 }],
    },
  ],
  doesNotApply: [
    { name: 'a rule set without a figure', classroom: room('us-massachusetts', 40, 0, 0) },
    { name: 'no children', classroom: room('us-california', 0, 0, 0) },
  ],
});
