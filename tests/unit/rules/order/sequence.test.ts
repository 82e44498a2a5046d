import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { analyse } from '#model/analysis/report.ts';
import { fromCatalogue } from '#model/catalogue/catalogue.ts';
import { measuresOf } from '#model/measures/measures.ts';
import { sequence } from '#model/rules/order/sequence.ts';
import { buildScene } from '#model/scene/build.ts';
import { readClassroomFile } from '#model/schema/readFile.ts';
import type { ClassroomInput } from '#model/schema/types.ts';
import type { PlainRoomChange } from '#tests/support/plainRoom.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';
import { testRule } from '#tests/support/ruleTester.ts';
import { placed, shelf, shelvedInOrder, tray } from '#tests/support/shelfRoom.ts';

const read = readClassroomFile(readFileSync(resolve(import.meta.dirname, '../../../../client/demo/demo-room.json'), 'utf8'));
if (!read.ok) throw new Error(JSON.stringify(read.problems));
const demo = read.classroom;

type Boards = Parameters<typeof placed>[0];
type Materials = NonNullable<ClassroomInput['materials']>;

const shelved = (materials: Materials, boards: Boards, change: PlainRoomChange = {}) =>
  plainRoom({ pieces: [shelf('a')], materials, placements: placed(boards), ...change });
const steps = (...list: (number | null)[]): Materials => list.map((step, i) => tray(`m${i + 1}`, { step }));
const tower = fromCatalogue('se-tower', 'tower');
const stair = fromCatalogue('se-broad-stair', 'stair');
const blocks = fromCatalogue('se-cyl-diam', 'blocks');
const low = { boards: 1, levels: [{ id: 'a-1', surface: 60 }], height: 400 };
const heavyBelow = (heaviest: number | null): Materials => [
  tray('m1', { step: 1, heaviest, carried: 'whole', hands: 2, fromMonths: 36 }),
  tray('m2', { step: 2 }),
];

const many = steps(...Array.from({ length: 202 }, (_, i) => i));

testRule(sequence, {
  fine: [
    { name: 'left to right, top to bottom', classroom: shelved(steps(1, 2, 3, 4), { 'a-1': ['m1', 'm2'], 'a-3': ['m3', 'm4'] }) },
    { name: 'ties may stand either way', classroom: shelved(steps(2, 2, 3), { 'a-1': ['m2', 'm1', 'm3'] }) },
    {
      name: 'right to left',
      classroom: shelved(steps(1, 2), { 'a-1': ['m2', 'm1'] }, { display: { readingDirection: 'rtl' } }),
    },
    {
      name: 'column by column where the shelf is read so',
      classroom: shelved(steps(1, 2, 3, 4), { 'a-1': ['m1', 'm3'], 'a-2': ['m2', 'm4'] }, { pieces: [shelf('a', { reading: 'columns' })] }),
    },
    {
      name: 'the walk of the class decides which shelf comes first',
      classroom: shelved(
        steps(1, 2),
        { 'b-1': ['m1'], 'a-1': ['m2'] },
        {
          pieces: [shelf('a'), shelf('b', { x: 4500 })],
          walk: [
            { piece: 'b', side: 'front' },
            { piece: 'a', side: 'front' },
          ],
        },
      ),
    },
    {
      name: 'practical life is not judged until the class wants it',
      classroom: shelved(
        [
          ...steps(1, 2),
          tray('p1', { area: 'practical-life', strand: 'care', step: 1 }),
          tray('p2', { area: 'practical-life', strand: 'care', step: 2 }),
        ],
        {
          'a-1': ['m1', 'm2'],
          'a-2': ['p2', 'p1'],
        },
      ),
    },
    {
      name: 'a catalogue prerequisite gives way to what the class says',
      classroom: shelved([{ ...tower, after: ['stair'], afterSure: { stair: 'own' } }, { ...stair }], { 'a-1': ['stair', ['tower', 800]] }),
    },
    {
      name: 'something heavy on the lowest board, whatever its step',
      classroom: shelved([...heavyBelow(1.3), tray('m3', { step: 3 })], { 'a-1': ['m2', 'm3'], 'a-3': ['m1'] }),
    },
    {
      name: 'what stands on a shelf for adults is no step',
      classroom: shelved(
        [...steps(1, 2, 3)],
        { 'a-1': ['m2', 'm3'], 'b-1': ['m1'] },
        { pieces: [shelf('a'), shelf('b', { x: 4500, for: 'adults' })] },
      ),
    },
  ],
  problem: [
    {
      name: 'one thing out of place in its strand',
      classroom: shelved(steps(1, 2, 3, 4), { 'a-1': ['m4', 'm1', 'm2', 'm3'] }),
      findings: [{ messageKey: 'order', severity: 'should', subjects: ['m4'], measured: 1, needed: 0, fix: 'gone' }],
    },
    {
      name: 'two of four, although three pairs are wrong',
      classroom: shelved(steps(3, 4, 1, 2), { 'a-1': ['m1', 'm2'], 'a-2': ['m3', 'm4'] }),
      findings: [{ messageKey: 'order', subjects: ['m1', 'm2'], measured: 2, fix: 'gone' }],
    },
    {
      name: 'a published prerequisite of the catalogue',
      classroom: shelved([tower, stair], { 'a-1': ['stair', ['tower', 800]] }),
      findings: [{ messageKey: 'order', severity: 'should', subjects: ['stair'], fix: 'gone' }],
    },
    {
      name: 'a prerequisite of a prerequisite that this class does not have',
      classroom: shelved([blocks, stair], { 'a-1': ['stair'], 'a-2': ['blocks'] }),
      findings: [{ messageKey: 'order', severity: 'should', subjects: ['stair'], fix: 'gone' }],
    },
    {
      name: 'a prerequisite across strands counts for the strand of what comes later',
      classroom: shelved([tray('m1', { strand: 'touch' }), tray('m2', { strand: 'number', after: ['m1'] })], { 'a-1': ['m2', 'm1'] }),
      findings: [{ messageKey: 'order', severity: 'should', subjects: ['m2'], fix: 'gone' }],
    },
    {
      name: 'over a material that is not placed',
      classroom: shelved(
        [tray('m1', { strand: '' }), tray('m2', { strand: '', after: ['m1'] }), tray('m3', { strand: '', after: ['m2'] })],
        {
          'a-1': ['m3', 'm1'],
        },
      ),
      findings: [{ messageKey: 'order', subjects: ['m3'], fix: 'gone' }],
    },
    {
      name: 'common practice is only a note',
      classroom: shelved([tray('m1'), tray('m2', { after: ['m1'], afterSure: { m1: 'common practice' } })], { 'a-1': ['m2', 'm1'] }),
      findings: [{ messageKey: 'order', severity: 'note', subjects: ['m2'], fix: 'gone' }],
    },
    {
      name: 'equal steps do not cancel a prerequisite',
      classroom: shelved([tray('m1', { step: 1 }), tray('m2', { step: 1, after: ['m1'] })], { 'a-1': ['m2', 'm1'] }),
      findings: [{ messageKey: 'order', subjects: ['m2'], fix: 'gone' }],
    },
    {
      name: 'practical life, once the class wants it',
      classroom: shelved(
        [tray('p1', { area: 'practical-life', step: 1 }), tray('p2', { area: 'practical-life', step: 2 })],
        { 'a-1': ['p2', 'p1'] },
        { options: { 'order/sequence': { practicalLife: true } } },
      ),
      findings: [{ messageKey: 'order', subjects: ['p2'], fix: 'gone' }],
    },
    {
      name: 'a light thing on the lowest board is no exception',
      classroom: shelved([...heavyBelow(1), tray('m3', { step: 3 })], { 'a-1': ['m2', 'm3'], 'a-3': ['m1'] }),
      findings: [{ messageKey: 'order', subjects: ['m1'], fix: 'gone' }],
    },
    {
      name: 'what is carried is not known, so it is no exception',
      classroom: shelved([...heavyBelow(null), tray('m3', { step: 3 })], { 'a-1': ['m2', 'm3'], 'a-3': ['m1'] }),
      findings: [{ messageKey: 'order', subjects: ['m1'], fix: 'gone' }],
    },
    {
      name: 'one finding a strand',
      classroom: shelved([...steps(1, 2), tray('n1', { strand: 'touch', step: 1 }), tray('n2', { strand: 'touch', step: 2 })], {
        'a-1': ['m2', 'm1'],
        'a-2': ['n2', 'n1'],
      }),
      findings: [
        { messageKey: 'order', subjects: ['m2'], fix: 'gone' },
        { messageKey: 'order', subjects: ['n2'], fix: 'gone' },
      ],
    },
    {
      name: 'no other board has room, but the two fit in each other’s place',
      classroom: shelved(
        [tray('m1', { step: 1, width: 500 }), tray('m2', { step: 2, width: 900 })],
        { 'a-1': ['m2'], 'a-2': ['m1'] },
        { pieces: [shelf('a', { boards: 2, width: 1000 })] },
      ),
      findings: [{ messageKey: 'order', subjects: ['m2'], fix: 'gone' }],
    },
    {
      name: 'no board in step has room: what stands in the way there moves as well',
      // m2 belongs between m1 and n, which comes after it and fills the board; the last board is free.
      classroom: shelved(
        [
          tray('m1', { step: 1, width: 300 }),
          tray('m2', { step: 2, width: 600 }),
          tray('n', { strand: 'other', after: ['m2'], width: 650 }),
        ],
        { 'a-1': ['m2'], 'a-2': ['m1', ['n', 350]] },
        { pieces: [shelf('a', { boards: 3, width: 1000 })] },
      ),
      findings: [{ messageKey: 'order', subjects: ['m2'], measured: 1, fix: 'gone' }],
    },
    {
      name: 'no board has room: says which and by how much',
      classroom: shelved(
        [tray('m1', { step: 1, width: 500 }), tray('m2', { step: 2, width: 900 }), tray('n', { strand: '', width: 400 })],
        { 'a-1': ['m2'], 'a-2': ['m1', ['n', 560]] },
        { pieces: [shelf('a', { boards: 2, width: 1000 })] },
      ),
      findings: [{ messageKey: 'short', subjects: ['m2'] }],
    },
    {
      name: 'more than two hundred things to move are a new arrangement, not a fix',
      classroom: shelvedInOrder(many, many.map(({ id }) => id).reverse()),
      findings: [{ messageKey: 'order', measured: 201 }],
    },
  ],
  cannotTell: [
    {
      name: 'the class has put its own materials in a circle',
      classroom: shelved([tray('m1', { after: ['m2'] }), tray('m2', { after: ['m1'] })], { 'a-1': ['m1', 'm2'] }),
      findings: [
        {
          messageKey: 'circle',
          subjects: ['m1', 'm2'],
          missing: ['say which of m1 and m2 comes first: take one of them out of what another comes after, or set their steps'],
        },
      ],
    },
  ],
  doesNotApply: [
    { name: 'nothing is placed', classroom: shelved(steps(1, 2), {}) },
    { name: 'nothing that is placed has an order', classroom: shelved(steps(null, 2), { 'a-1': ['m2', 'm1'] }) },
    { name: 'a lone low shelf with one thing', classroom: shelved(steps(1), { 'a-1': ['m1'] }, { pieces: [shelf('a', low)] }) },
  ],
});

describe('the order line of the report', () => {
  const report = (materials: Materials, boards: Boards, change: PlainRoomChange = {}) =>
    measuresOf(buildScene(shelved(materials, boards, change)))
      .order()
      .strands();

  it('gives each strand what is placed, what can stay and where the rest goes', () => {
    expect(report([...steps(2, 1), tray('n1', { strand: 'touch' })], { 'a-1': ['m1', 'm2'], 'a-2': ['n1'] })).toEqual([
      {
        strand: 'sight',
        placed: 2,
        inOrder: 1,
        moves: [{ material: 'm1', to: { piece: 'a', side: 'front', level: 'a-1', x: 500 } }],
      },
      { strand: 'touch', placed: 1, inOrder: 1, moves: [] },
    ]);
  });

  it('pushes the rest along the board only as far as it must', () => {
    const materials = steps(1, 3, 2).map((m) => ({ ...m, width: 300 }));
    const classroom = shelved(
      materials,
      {
        'a-1': [
          ['m1', 0],
          ['m2', 400],
          ['m3', 800],
        ],
      },
      { pieces: [shelf('a', { boards: 1 })] },
    );
    const order = measuresOf(buildScene(classroom)).order();
    const [trouble] = order.troubles;
    const moved = trouble ? order.mend(trouble).placements : [];
    expect(moved.map(({ material, x }) => [material, x])).toEqual([
      ['m3', 550],
      ['m2', 900],
    ]);
  });

  it('stands in the report of the whole room', () => {
    const { measures, answers } = analyse(shelved(steps(2, 1), { 'a-1': ['m1', 'm2'] }));
    expect(measures.order).toMatchObject([{ strand: 'sight', placed: 2, inOrder: 1 }]);
    expect(answers['order/sequence']).toBe('problem');
  });
});

it('names first among its trays the one that its words begin with, also where another is filed first', () => {
  const rooms = [
    shelved(steps(1, 2, 3, 4), { 'a-1': ['m4', 'm1', 'm2', 'm3'] }),
    shelved(steps(3, 4, 1, 2), { 'a-1': ['m1', 'm2'], 'a-2': ['m3', 'm4'] }),
    demo,
  ];
  const all = rooms.flatMap((room) => analyse(room).findings.filter(({ rule, fix }) => rule === 'order/sequence' && fix));
  expect(all.length).toBeGreaterThan(4);
  for (const { trays = [], message } of all) {
    // Of the plain rooms the ids are the names.
    const first = demo.materials.find(({ id }) => id === trays[0])?.name ?? trays[0];
    expect(message.startsWith(`Put ${first}`) || message.startsWith(`Move ${first}`), `${first}: ${message}`).toBe(true);
  }
  expect(all.some(({ trays = [], subjects }) => trays[0] !== subjects[0])).toBe(true);
});

describe('the words', () => {
  const said = (materials: Materials, boards: Boards): string =>
    analyse(shelved(materials, boards)).findings.find(({ rule }) => rule === 'order/sequence')?.message ?? '';

  it('say first what to do, then why', () => {
    expect(said(steps(1, 2, 3, 4), { 'a-1': ['m4', 'm1', 'm2', 'm3'] })).toMatch(
      /^Put m4, step 4, on the top board of .*, right of m3\. m1, step 1, comes before step 4 by the class’s own steps \(sight\), but now stands after it, on the same board\.$/,
    );
    expect(said([...steps(1, 2, 3)], { 'a-1': ['m2', 'm3'], 'a-2': ['m1'] })).toMatch(
      /^Put m1, step 1, on the top board of .*, at its left end\. It comes before m2, step 2, by .*, but now stands after it, on the middle board there\.$/,
    );
    expect(said(steps(3, 4, 1, 2), { 'a-1': ['m1', 'm2'], 'a-2': ['m3', 'm4'] })).toMatch(
      /^Put m1, step 3, on .*; m2, step 4, on .*\. m3, step 1, comes before step 3 by .* Also the wrong way round: .*$/,
    );
    expect(said(steps(3, 3, 1), { 'a-1': ['m1', 'm2'], 'a-2': ['m3'] }), 'a step of two things names neither').toMatch(
      /It comes before m1 by .*/,
    );
  });
});
