import { advisory } from '#model/rules/reach/advisory.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';
import { testRule } from '#tests/support/ruleTester.ts';
import { placed, shelf, tray } from '#tests/support/shelfRoom.ts';

// Bands: ADA Standards 2010, advisory 308.1 (A15), printed in mm and in inches.
const ages = (...from: number[]) => ({
  groups: from.map((fromMonths, i) => ({ id: `g${i}`, fromMonths, toMonths: fromMonths + 12, count: 5 })),
});
/** One tray gripped 50 above a board. */
const room = (surface: number, change: PlainRoomChange = {}) =>
  plainRoom({
    access: { wheelchair: true },
    pieces: [shelf('s', { height: 1400, levels: [{ id: 's-1', surface }] })],
    materials: [tray('m1')],
    placements: placed({ 's-1': ['m1'] }),
    ...change,
  });
const note = { messageKey: 'outside', severity: 'note', subjects: ['s'] } as const;

testRule(advisory, {
  fine: [
    { name: 'at three: up to 915', classroom: room(865) },
    { name: 'at three: down to 510', classroom: room(460) },
    { name: 'and down to 20 in', classroom: room(458) },
    { name: 'at six: up to 1015', classroom: room(965, { children: ages(72) }) },
    { name: 'at ten: up to 1120', classroom: room(1070, { children: ages(120) }) },
    { name: 'a band of the class', classroom: room(200, { options: { 'reach/advisory': { high: 800, low: 250 } } }) },
  ],
  problem: [
    { name: 'at three: above 915', classroom: room(866), findings: [{ ...note, measured: 916, needed: 915 }] },
    { name: 'at three: below 20 in', classroom: room(457), findings: [{ ...note, measured: 507, needed: 510 }] },
    {
      name: 'three and ten together: the lowest high',
      classroom: room(900, { children: ages(36, 120) }),
      findings: [{ ...note, needed: 915 }],
    },
    {
      name: 'three and ten together: the highest low',
      classroom: room(400, { children: ages(36, 120) }),
      findings: [{ ...note, needed: 510 }],
    },
    { name: 'below the table its first row holds', classroom: room(900, { children: ages(24) }), findings: [{ ...note, needed: 915 }] },
    {
      name: 'one note a shelf, the farthest in figures',
      classroom: room(640, {
        pieces: [
          shelf('s', {
            levels: [
              { id: 's-1', surface: 300 },
              { id: 's-2', surface: 10 },
            ],
          }),
        ],
        materials: [tray('m1'), tray('m2')],
        placements: placed({ 's-1': ['m1'], 's-2': ['m2'] }),
      }),
      findings: [{ ...note, measured: 60, needed: 510 }],
    },
    {
      name: 'the class’s own figure is taken as it is',
      classroom: room(459, { options: { 'reach/advisory': { low: 510 } } }),
      findings: [{ ...note, measured: 509, needed: 510 }],
    },
  ],
  cannotTell: [
    {
      name: 'a thing without a height that decides',
      classroom: room(480, { materials: [tray('m1', { height: null })] }),
      findings: [{ messageKey: 'notKnown', missing: ['give m1 its height'] }],
    },
    {
      name: 'a shelf without a height',
      classroom: room(0, {
        pieces: [{ id: 's', kind: 'shelf', name: 'A', x: 2500, y: 160, width: 1200, depth: 320 }],
        placements: [{ material: 'm1', piece: 's', x: 0 }],
      }),
      findings: [{ messageKey: 'notKnown', missing: ['give A its height'] }],
    },
    {
      name: 'no ages',
      classroom: room(600, { children: { groups: [] } }),
      findings: [{ messageKey: 'noAges', missing: ['give the ages of the children'] }],
    },
  ],
  doesNotApply: [
    { name: 'nobody uses a wheelchair', classroom: room(60, { access: { required: true } }) },
    { name: 'nothing on a shelf', classroom: room(60, { placements: [] }) },
  ],
});
