import { describe, expect, it } from 'vitest';
import { inHandOrder, orderTroubles } from '#model/analysis/moveDay/handOrder.ts';
import { type MovePlan, planMove } from '#model/analysis/moveDay/plan.ts';
import { demoRoom } from '#tests/support/demo/demoRoom.ts';
import { type MovePiece, moveRoom } from '#tests/support/moveRoom.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';

const levels = [
  { id: 'l1', surface: 640 },
  { id: 'l2', surface: 300 },
];
const shelf = (id: string, x: number, y: number, more: Partial<MovePiece> = {}): MovePiece => ({
  id,
  kind: 'shelf',
  x,
  y,
  rotation: -90,
  width: 1000,
  depth: 400,
  height: 700,
  anchored: true,
  levels,
  ...more,
});
const steps = (plan: MovePlan) => plan.steps.map(({ id }) => id);
const after = (plan: MovePlan) => Object.fromEntries(plan.steps.map((step) => [step.id, step.after]));
const stepOf = (plan: MovePlan, id: string) => {
  const found = plan.steps.find((step) => step.id === id);
  if (!found) throw new Error(`no step ${id}`);
  return found;
};

describe('three shelves along the west wall, each slid north into the place of the one before', () => {
  const materials = ['m1', 'm2', 'm3'].map((id) => ({ id, name: id, width: 200, depth: 200, mass: 2 }));
  const placed = materials.map(({ id }, i) => ({ material: id, piece: `s${i + 1}`, level: 'l1', x: 0 }));
  const plan = planMove(
    moveRoom(
      [shelf('s3', 200, 3900), shelf('s2', 200, 2800), shelf('s1', 200, 1700)],
      [shelf('s3', 200, 2750), shelf('s2', 200, 1700), shelf('s1', 200, 650)],
      { materials, placed: [placed, placed] },
    ),
    'a1',
    'a2',
  );

  it('go one after the other, from the north', () => {
    expect(steps(plan)).toEqual(['empty:s1+s2+s3', 'move:s1', 'move:s2', 'move:s3', 'fill:s1+s2+s3', 'mats', 'tape']);
    expect(after(plan)).toEqual({
      'empty:s1+s2+s3': [],
      'move:s1': ['empty:s1+s2+s3'],
      'move:s2': ['move:s1'],
      'move:s3': ['move:s2'],
      'fill:s1+s2+s3': ['move:s3'],
      mats: ['fill:s1+s2+s3'],
      tape: ['mats'],
    });
  });

  it('slide, to a distance that can be measured: from the north wall, and clear of the shelf before', () => {
    expect(stepOf(plan, 'move:s1').path).toEqual({ how: 'slide', legs: [{ x: 0, y: -1050 }] });
    expect(stepOf(plan, 'move:s1').by).toEqual({ kind: 'wall', id: 'wall:c1', gap: 150 });
    expect(stepOf(plan, 'move:s2').by).toEqual({ kind: 'piece', id: 's1', gap: 50 });
  });

  it('are unfastened first, by two because what is loose can tip, and fastened again', () => {
    expect(stepOf(plan, 'move:s1')).toMatchObject({ unfasten: 'yes', fasten: 'yes', people: 2, isLarge: false });
  });

  it.each([
    [null, { unfasten: 'look', fasten: 'look' }],
    [false, { unfasten: null, fasten: 'loose' }],
  ] as const)('what is not known of their fastening (%s) is not said as known', (anchored, expected) => {
    const unsaid = planMove(moveRoom([shelf('s1', 200, 1700, { anchored })], [shelf('s1', 200, 650, { anchored })]), 'a1', 'a2');
    expect(stepOf(unsaid, 'move:s1')).toMatchObject(expected);
  });

  it('an order by hand that goes from the south runs into what still stands there', () => {
    const order = inHandOrder(plan.steps, ['empty:s1+s2+s3', 'move:s3', 'move:s2', 'move:s1', 'fill:s1+s2+s3', 'mats', 'tape']);
    expect([...orderTroubles(plan, order)].map(([id, { later, inTheWay }]) => [id, later.map(({ step }) => step), inTheWay])).toEqual([
      ['move:s3', ['move:s2'], ['s2']],
      ['move:s2', ['move:s1'], ['s1']],
    ]);
  });

  it('a step that an order by hand does not know comes after the one before it', () => {
    expect(inHandOrder(plan.steps, ['tape', 'move:s2', 'gone']).map(({ id }) => id)).toEqual([
      'empty:s1+s2+s3',
      'move:s1',
      'tape',
      'move:s2',
      'move:s3',
      'fill:s1+s2+s3',
      'mats',
    ]);
  });
});

describe('two shelves that change places', () => {
  const plan = planMove(
    moveRoom([shelf('s1', 200, 1700), shelf('s2', 200, 3200)], [shelf('s1', 200, 3200), shelf('s2', 200, 1700)]),
    'a1',
    'a2',
  );

  it('one is set aside first, on free floor, and comes back last', () => {
    expect(steps(plan)).toEqual(['aside:s1', 'move:s2', 'back:s1', 'mats', 'tape']);
    expect(stepOf(plan, 'back:s1').after).toEqual(['move:s2']);
    expect(plan.sequence.isLeast).toBe(true);
    expect(stepOf(plan, 'aside:s1').stands).not.toBeNull();
  });

  it('is unfastened when it is set aside and fastened where it comes to stand', () => {
    expect(stepOf(plan, 'aside:s1')).toMatchObject({ unfasten: 'yes', fasten: null });
    expect(stepOf(plan, 'back:s1')).toMatchObject({ unfasten: null, fasten: 'yes' });
  });

  it('in a room without floor for it, the step says so', () => {
    const low = [
      { id: 'c1', x: 0, y: 1150 },
      { id: 'c2', x: 700, y: 1150 },
      { id: 'c3', x: 700, y: 3750 },
      { id: 'c4', x: 0, y: 3750 },
    ];
    const full = planMove(
      moveRoom([shelf('s1', 200, 1700), shelf('s2', 200, 3200)], [shelf('s1', 200, 3200), shelf('s2', 200, 1700)], {
        room: { corners: low, openings: [] },
      }),
      'a1',
      'a2',
    );
    expect(stepOf(full, 'aside:s1').stands).toBeNull();
  });
});

describe('what the order cannot help', () => {
  it('a place that is taken in the later arrangement itself is told', () => {
    const plan = planMove(
      moveRoom([shelf('s1', 200, 1700), shelf('s2', 2000, 3200)], [shelf('s1', 2000, 3000), shelf('s2', 2000, 3200)]),
      'a1',
      'a2',
    );
    expect(stepOf(plan, 'move:s1').overlaps).toEqual(['s2']);
  });

  it('nothing to do where nothing differs', () => {
    const same = [shelf('s1', 200, 1700)];
    expect(planMove(moveRoom(same, same), 'a1', 'a2').steps).toEqual([]);
  });

  it('walls that cross: still an order, nothing set aside', () => {
    const corners = [
      { id: 'c1', x: 0, y: 0 },
      { id: 'c2', x: 6000, y: 5000 },
      { id: 'c3', x: 6000, y: 0 },
      { id: 'c4', x: 0, y: 5000 },
    ];
    const plan = planMove(moveRoom([shelf('s1', 200, 1700)], [shelf('s1', 900, 1700)], { room: { corners, openings: [] } }), 'a1', 'a2');
    expect(steps(plan)).toEqual(['move:s1', 'mats', 'tape']);
  });
});

it('a table takes its chairs along; a rug is laid before what stands on it; boards are set before trays come back', () => {
  const table: MovePiece = { id: 't1', kind: 'table', x: 3000, y: 2500, width: 1200, depth: 600 };
  const chair: MovePiece = { id: 'k1', kind: 'seat', x: 3000, y: 2900, width: 350, depth: 350, table: 't1' };
  const rug: MovePiece = { id: 'r1', kind: 'rug', x: 3000, y: 1400, width: 1500, depth: 1500 };
  const classroom = moveRoom(
    [table, chair, rug, shelf('s1', 200, 1700)],
    [
      { ...table, x: 4500, y: 3600 },
      { ...chair, x: 4500, y: 4000 },
      { ...rug, x: 4500, y: 3600 },
      { ...shelf('s1', 200, 1700), levels: [{ id: 'l1', surface: 600 }] },
    ],
    {
      materials: [{ id: 'm1', name: 'm1', width: 200, depth: 200 }],
      placed: [[{ material: 'm1', piece: 's1', level: 'l1', x: 0 }], [{ material: 'm1', piece: 's1', level: 'l1', x: 0 }]],
    },
  );
  const plan = planMove(classroom, 'a1', 'a2');
  expect(plan.units.map(({ changes }) => changes.map(({ id }) => id))).toEqual([['t1', 'k1'], ['r1']]);
  expect(steps(plan)).toEqual(['empty:s1', 'move:r1', 'move:t1', 'boards:s1', 'fill:s1', 'mats', 'tape']);
  expect(after(plan)).toMatchObject({ 'move:t1': ['move:r1'], 'boards:s1': ['empty:s1'], 'fill:s1': ['boards:s1'] });
});

it('the demo: from as it stands to the open middle, cupboards out first, nothing set aside', () => {
  const plan = planMove(plainRoom(demoRoom() as Parameters<typeof plainRoom>[0]), 'a1', 'a2');
  expect(plan.sequence).toMatchObject({ aside: [], isLeast: true });
  expect(steps(plan).slice(0, 4)).toEqual(['empty:pl2+cu2+la1+la2+cu1', 'out:store1', 'out:store2', 'out:store3']);
  expect(stepOf(plan, 'move:cu2').after).toEqual(['empty:pl2+cu2+la1+la2+cu1', 'out:store2']);
  expect(stepOf(plan, 'move:t1').waits.map(({ step }) => step)).toContain('out:store3');
  expect([...orderTroubles(plan, plan.steps)]).toEqual([]);
});
