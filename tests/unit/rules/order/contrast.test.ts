import { contrast } from '#model/rules/order/contrast.ts';
import type { ClassroomInput } from '#model/schema/types.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';
import { testRule } from '#tests/support/ruleTester.ts';
import { placed, shelf, tray } from '#tests/support/shelfRoom.ts';

type MaterialInput = NonNullable<ClassroomInput['materials']>[number];

const set = (id: string, isolates: string[], change: Partial<MaterialInput> = {}) => tray(id, { mode: 'grade', isolates, ...change });
const rods = set('rods', ['length (one dimension)']);
const stair = set('stair', ['thickness (two dimensions)']);
const cubes = set('cubes', ['size (three dimensions)']);
const row = (materials: MaterialInput[], change: PlainRoomChange = {}) =>
  plainRoom({ pieces: [shelf('s')], materials, placements: placed({ 's-1': materials.map(({ id }) => id) }), ...change });
const note = { messageKey: 'later', severity: 'note' } as const;

testRule(contrast, {
  fine: [
    { name: 'three, two, one', classroom: row([cubes, stair, rods]) },
    { name: 'as many as before', classroom: row([set('a', ['length']), set('b', ['hue'])]) },
    { name: 'another strand', classroom: row([rods, stair, set('c', ['x', 'y', 'z'], { strand: 'hearing' })].reverse()) },
    { name: 'what is matched is not graded', classroom: row([stair, rods, tray('m', { mode: 'match', isolates: ['a', 'b', 'c'] })]) },
    { name: 'the steps want it so', classroom: row([set('a', ['length'], { step: 1 }), set('b', ['length', 'depth'], { step: 2 })]) },
    {
      name: 'a class that allows one more',
      classroom: row([rods, stair], { options: { 'order/contrast': { allowed: 1 } } }),
    },
  ],
  problem: [
    { name: 'one before two', classroom: row([rods, stair]), findings: [{ ...note, subjects: ['stair', 'rods'] }] },
    { name: 'the largest difference', classroom: row([rods, stair, cubes]), findings: [{ ...note, subjects: ['cubes', 'rods'] }] },
    {
      name: 'a list of qualities counts each',
      classroom: row([set('a', ['hue']), set('b', ['hue', 'lightness'])]),
      findings: [{ ...note, subjects: ['b', 'a'] }],
    },
    {
      name: 'read from right to left',
      classroom: row([cubes, rods], { display: { readingDirection: 'rtl' } }),
      findings: [{ ...note, subjects: ['cubes', 'rods'] }],
    },
    {
      name: 'what is known is judged beside what is not',
      classroom: row([rods, set('x', []), stair]),
      findings: [note, { messageKey: 'notSaid', missing: ['say which qualities vary in x'] }],
    },
  ],
  cannotTell: [
    {
      name: 'a graded thing that does not say what it isolates',
      classroom: row([cubes, set('x', [' '])]),
      findings: [{ messageKey: 'notSaid', subjects: ['x'], missing: ['say which qualities vary in x'] }],
    },
  ],
  doesNotApply: [
    { name: 'an empty room', classroom: plainRoom() },
    { name: 'one graded thing', classroom: row([cubes]) },
    { name: 'no strand', classroom: row([rods, stair].map((m) => ({ ...m, strand: '' }))) },
  ],
});
