import { describe, expect, it } from 'vitest';
import { judgeRule } from '#model/analysis/report.ts';
import { applyEdits } from '#model/findings/applyEdits.ts';
import { measuresOf } from '#model/measures/measures.ts';
import { crowded } from '#model/rules/order/crowded.ts';
import { buildScene } from '#model/scene/build.ts';
import type { ClassroomInput } from '#model/schema/types.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';
import { testRule } from '#tests/support/ruleTester.ts';
import { placed, shelf, tray } from '#tests/support/shelfRoom.ts';

type Materials = NonNullable<ClassroomInput['materials']>;
type Boards = Parameters<typeof placed>[0];

const three = [tray('m1'), tray('m2'), tray('m3')];
const shelved = (materials: Materials, boards: Boards, change: PlainRoomChange = {}) =>
  plainRoom({ pieces: [shelf('a')], materials, placements: placed(boards), ...change });
/** One tray in the middle board: 1160 long between the panels, 320 deep, 270 clear. */
const alone = (change: Partial<Materials[number]>, at: { x?: number; y?: number } = {}) =>
  plainRoom({
    pieces: [shelf('a')],
    materials: [tray('m1', change)],
    placements: [{ material: 'm1', piece: 'a', level: 'a-2', x: 0, ...at }],
  });
const twoSided = (divider: boolean) =>
  plainRoom({
    pieces: [shelf('a', { sides: ['front', 'back'], divider, y: 2000 })],
    materials: three.slice(0, 2),
    placements: [
      { material: 'm1', piece: 'a', side: 'front', level: 'a-2', x: 0 },
      { material: 'm2', piece: 'a', side: 'back', level: 'a-2', x: 900 },
    ],
  });

testRule(crowded, {
  fine: [
    { name: 'trays the gap apart', classroom: shelved(three, { 'a-1': ['m1', 'm2', 'm3'] }) },
    { name: 'a tray that fills its place', classroom: alone({ width: 1160, depth: 320, height: 270 }) },
    { name: 'any height on top', classroom: shelved([tray('m1', { height: 2000 })], { 'a-1': ['m1'] }) },
    {
      name: 'closer, where the class wants less',
      classroom: shelved(three, { 'a-1': ['m1', ['m2', 230]] }, { options: { 'order/crowded': { trayGap: 30 } } }),
    },
    {
      name: 'one behind the other',
      classroom: plainRoom({
        pieces: [shelf('a', { depth: 500 })],
        materials: three,
        placements: [
          { material: 'm1', piece: 'a', level: 'a-1', x: 0 },
          { material: 'm2', piece: 'a', level: 'a-1', x: 50, y: 250 },
        ],
      }),
    },
    {
      name: 'back to back with a divider, where each keeps its half',
      classroom: plainRoom({
        pieces: [shelf('a', { sides: ['front', 'back'], divider: true, depth: 640, y: 2000 })],
        materials: three.slice(0, 2),
        placements: [
          { material: 'm1', piece: 'a', side: 'front', level: 'a-2', x: 0 },
          { material: 'm2', piece: 'a', side: 'back', level: 'a-2', x: 900 },
        ],
      }),
    },
    {
      name: 'crowded, but on a shelf for adults',
      classroom: shelved(
        [...three, tray('m4')],
        { 'a-1': ['m1'], 'b-1': ['m2', ['m3', 100]] },
        { pieces: [shelf('a'), shelf('b', { x: 4500, for: 'adults' })] },
      ),
    },
  ],
  problem: [
    {
      name: 'closer than two hands need',
      classroom: shelved(three, { 'a-1': ['m1', ['m2', 249]] }),
      findings: [{ messageKey: 'close', severity: 'note', subjects: ['a', 'm1', 'm2'], measured: 49, needed: 50, fix: 'gone' }],
    },
    {
      name: 'in the same place',
      classroom: shelved(three, { 'a-1': ['m1', ['m2', 150], ['m3', 600]] }),
      findings: [{ messageKey: 'overlap', severity: 'should', subjects: ['a', 'm1', 'm2'], measured: -50, needed: 0, fix: 'gone' }],
    },
    {
      name: 'in the same place, with room only to pack',
      classroom: shelved([tray('m1', { width: 580 }), tray('m2', { width: 580 })], { 'a-2': ['m1', ['m2', 500]] }),
      findings: [{ messageKey: 'overlap', measured: -80, fix: 'gone' }],
    },
    {
      name: 'in the same place, and too much for the board',
      classroom: shelved([tray('m1', { width: 580 }), tray('m2', { width: 581 })], { 'a-2': ['m1', ['m2', 500]] }),
      findings: [{ messageKey: 'overlap', measured: -80 }],
    },
    {
      name: 'too full for the gap: a note without a fix',
      classroom: shelved([tray('m1', { width: 570 }), tray('m2', { width: 570 })], { 'a-2': ['m1', ['m2', 580]] }),
      findings: [{ messageKey: 'close', severity: 'note', measured: 10, needed: 50 }],
    },
    {
      name: 'over the right end',
      classroom: alone({}, { x: 1000 }),
      findings: [{ messageKey: 'hang', severity: 'should', subjects: ['a', 'm1'], measured: 40, needed: 0, fix: 'gone' }],
    },
    { name: 'over the left end', classroom: alone({}, { x: -30 }), findings: [{ messageKey: 'hang', measured: 30, fix: 'gone' }] },
    { name: 'over the front', classroom: alone({}, { y: -15 }), findings: [{ messageKey: 'hang', measured: 15, fix: 'gone' }] },
    { name: 'over the back', classroom: alone({}, { y: 130 }), findings: [{ messageKey: 'hang', measured: 10, fix: 'gone' }] },
    { name: 'longer than the board', classroom: alone({ width: 1161 }), findings: [{ messageKey: 'wide', measured: 1161, needed: 1160 }] },
    { name: 'higher than the space', classroom: alone({ height: 275 }), findings: [{ messageKey: 'tall', measured: 275, needed: 270 }] },
    {
      name: 'deeper than the board, but not if it is turned',
      classroom: alone({ width: 200, depth: 400 }),
      findings: [{ messageKey: 'deep', measured: 400, needed: 320, fix: 'gone' }],
    },
    {
      name: 'deeper than the board either way',
      classroom: alone({ width: 380, depth: 400 }),
      findings: [{ messageKey: 'deep', measured: 400 }],
    },
    {
      name: 'back to back without a divider',
      classroom: twoSided(false),
      findings: [{ messageKey: 'overlap', subjects: ['a', 'm1', 'm2'] }],
    },
    {
      name: 'back to back with a divider that leaves each too little depth',
      classroom: twoSided(true),
      findings: [{ messageKey: 'deep', measured: 200, needed: 160 }, { messageKey: 'deep' }],
    },
    {
      name: 'one finding for each board',
      classroom: shelved([...three, tray('m4')], { 'a-1': ['m1', ['m2', 100]], 'a-2': ['m3', ['m4', 100]] }),
      findings: [
        { messageKey: 'overlap', subjects: ['a', 'm1', 'm2'], fix: 'gone' },
        { messageKey: 'overlap', subjects: ['a', 'm3', 'm4'], fix: 'gone' },
      ],
    },
  ],
  cannotTell: [
    {
      name: 'a size is not known',
      classroom: shelved([tray('m1', { width: null, height: null }), tray('m2')], { 'a-2': ['m1', 'm2'] }),
      findings: [{ messageKey: 'notMeasured', severity: 'should', subjects: ['a'], missing: ['give m1 its width and height'] }],
    },
  ],
  doesNotApply: [{ name: 'nothing stands on a shelf', classroom: shelved(three, {}) }],
});

describe('what crowded says and does', () => {
  const judged = (boards: Boards, materials: Materials = three) => {
    const classroom = shelved(materials, boards);
    const scene = buildScene(classroom);
    return { classroom, findings: judgeRule(crowded, scene, measuresOf(scene)).findings };
  };

  it('says how many more would fit', () => {
    // 1200 long: three of 200 and two gaps take 700; two more with their gaps take 500.
    expect(judged({ 'a-1': ['m1', ['m2', 100], 'm3'] }).findings[0]?.message).toContain('two more would fit');
  });

  it('says by how much the board is too full', () => {
    const wide = three.map((m) => ({ ...m, width: 400 }));
    // Three of 400 and two gaps of 50 on 1160.
    expect(judged({ 'a-2': ['m1', ['m2', 300], ['m3', 700]] }, wide).findings[0]?.message).toContain('takes 0.14 m more board');
  });

  it('spaces the board evenly, ends included', () => {
    const { classroom, findings } = judged({ 'a-1': ['m1', ['m2', 100], ['m3', 1100]] });
    const mended = applyEdits(classroom, 'a1', findings[0]?.fix?.edits ?? []);
    const xs = mended.arrangements[0]?.placements.map(({ material, x }) => [material, x]).sort();
    // 1200 less 600 leaves four spaces of 150.
    expect(xs).toEqual([
      ['m1', 150],
      ['m2', 500],
      ['m3', 850],
    ]);
  });
});
