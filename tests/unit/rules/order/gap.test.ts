import { expect, it } from 'vitest';
import { analyse } from '#model/analysis/report.ts';
import { gap } from '#model/rules/order/gap.ts';
import type { ClassroomInput } from '#model/schema/types.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';
import { testRule } from '#tests/support/ruleTester.ts';
import { placed, shelf, tray } from '#tests/support/shelfRoom.ts';

type MaterialInput = NonNullable<ClassroomInput['materials']>[number];

const room = (materials: MaterialInput[], onBoard: readonly string[], change: PlainRoomChange = {}) =>
  plainRoom({ pieces: [shelf('s')], materials, placements: placed({ 's-2': onBoard }), ...change });
const second = tray('m2', { after: ['m1'], step: 20 });
const first = (change: Partial<MaterialInput> = {}) => tray('m1', { step: 10, ...change });
/** The catalogue's graded touch strips come after the touch board by the 1912 handbook (M1912 ch. XIV). */
const graded = tray('x', { catalogue: 'se-touch-strips', after: ['se-touch-board'], afterSure: { 'se-touch-board': 'published' } });

testRule(gap, {
  fine: [
    { name: 'the step before stands there', classroom: room([first(), second], ['m1', 'm2']) },
    { name: 'wherever it stands, out of order too', classroom: room([first(), second], ['m2', 'm1']) },
    {
      name: 'a copy of the catalogue material stands there',
      classroom: room([graded, tray('y', { catalogue: 'se-touch-board' })], ['x', 'y']),
    },
    {
      name: 'of two copies one is in store, the other out',
      classroom: room(
        [graded, tray('y', { catalogue: 'se-touch-board', state: 'store' }), tray('z', { catalogue: 'se-touch-board' })],
        ['x', 'z'],
      ),
    },
    { name: 'it stands with another material', classroom: room([first({ stands: { with: 'm3' } }), second, tray('m3')], ['m2', 'm3']) },
    {
      name: 'put out from the store for this arrangement',
      classroom: room([first({ state: 'store' }), second], ['m1', 'm2']),
    },
    {
      name: 'an exercise without a tray is never missing',
      classroom: room([first({ stands: 'none' }), tray('m3'), tray('m2', { after: ['m1', 'm3'] })], ['m3', 'm2']),
    },
  ],
  problem: [
    {
      name: 'being mended, though its place is kept',
      classroom: room([first({ state: 'mend' }), second], ['m1', 'm2']),
      findings: [{ messageKey: 'away', severity: 'should', subjects: ['m1', 'm2'] }],
    },
    {
      name: 'wanted, and only common practice asks for it',
      classroom: room([first({ state: 'wanted' }), tray('m2', { after: ['m1'], afterSure: { m1: 'common practice' } })], ['m2']),
      findings: [{ messageKey: 'away', severity: 'note' }],
    },
    {
      name: 'the surest word counts, one finding for all that it prepares',
      classroom: room(
        [first({ state: 'make' }), tray('m2', { after: ['m1'], afterSure: { m1: 'common practice' } }), tray('m3', { after: ['m1'] })],
        ['m2', 'm3'],
      ),
      findings: [{ messageKey: 'away', severity: 'should', subjects: ['m1', 'm2', 'm3'] }],
    },
    {
      name: 'the class does not have what a handbook puts first',
      classroom: room([graded], ['x']),
      findings: [{ messageKey: 'absent', severity: 'should', subjects: ['x'] }],
    },
    {
      name: 'in store: put out before what it prepares',
      classroom: room([first({ state: 'store' }), second], ['m2']),
      findings: [{ messageKey: 'store', severity: 'note', fix: 'gone' }],
    },
    {
      name: 'out, but nowhere in this arrangement',
      classroom: room([first(), second], ['m2']),
      findings: [{ messageKey: 'unplaced', severity: 'note', fix: 'gone' }],
    },
    {
      name: 'no board has room for it',
      classroom: room([first({ width: 1300 }), second], ['m2']),
      findings: [{ messageKey: 'unplaced', severity: 'note' }],
    },
  ],
  cannotTell: [
    {
      name: 'a prerequisite that nobody knows',
      classroom: room([second], ['m2']),
      findings: [{ messageKey: 'unknown', missing: ['say what “m1” is, or take it out of what m2 comes after'] }],
    },
  ],
  doesNotApply: [
    { name: 'nothing has a step before it', classroom: room([first()], ['m1']) },
    { name: 'what has one is not on a shelf', classroom: room([first(), second], []) },
    { name: 'only an exercise without a tray comes before', classroom: room([first({ stands: 'none' }), second], ['m2']) },
  ],
});

it('names with the surest word only what it is said of, and counts the others', () => {
  const materials = [
    first({ state: 'make' }),
    tray('m2', { after: ['m1'], afterSure: { m1: 'common practice' } }),
    tray('m3', { after: ['m1'], afterSure: { m1: 'published' } }),
  ];
  const [finding] = analyse(room(materials, ['m2', 'm3']), { rules: [gap] }).findings;
  expect(finding?.message).toBe(
    'See to m1, which is still to be made: it comes before m3 by the handbooks and before 1 more by the class’s own word or by common practice.',
  );
});
