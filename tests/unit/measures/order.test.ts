import { describe, expect, it } from 'vitest';
import { fromCatalogue } from '#model/catalogue/catalogue.ts';
import { measuresOf } from '#model/measures/measures.ts';
import { components, makeDigraph } from '#model/measures/order/digraph.ts';
import { gapThatFits, nudge, spread } from '#model/measures/order/packing.ts';
import { inReadingOrder } from '#model/measures/order/reading.ts';
import { buildScene } from '#model/scene/build.ts';
import type { ClassroomInput } from '#model/schema/types.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';
import { placed, shelf, tray } from '#tests/support/shelfRoom.ts';

type Materials = NonNullable<ClassroomInput['materials']>;
const orderOf = (materials: Materials, boards: Parameters<typeof placed>[0], change: PlainRoomChange = {}) =>
  measuresOf(buildScene(plainRoom({ pieces: [shelf('a')], materials, placements: placed(boards), ...change }))).order();
const movesOf = (...given: Parameters<typeof orderOf>): string[] =>
  orderOf(...given)
    .strands()
    .flatMap(({ moves }) => moves.map(({ material }) => material))
    .sort();

const small = { width: 200, depth: 100, height: 100 };
const blocks = { ...fromCatalogue('se-cyl-diam', 'blocks'), ...small };
const tower = { ...fromCatalogue('se-tower', 'tower'), ...small };
const stair = { ...fromCatalogue('se-broad-stair', 'stair'), ...small };
const rods = { ...fromCatalogue('se-long-stair', 'rods'), ...small };

describe('circles', () => {
  it('of the catalogue give way to the class: its own prerequisite outweighs published steps', () => {
    const own = { ...tower, after: ['stair'], afterSure: { stair: 'own' as const } };
    const given = [own, stair, rods];
    expect(orderOf(given, { 'a-1': ['stair', 'tower', 'rods'] }).circles).toEqual([]);
    expect(movesOf(given, { 'a-1': ['stair', 'tower', 'rods'] })).toEqual([]);
    expect(movesOf(given, { 'a-1': ['tower', 'stair', 'rods'] })).toEqual(['tower']);
  });

  it('leave what the catalogue says of a member and of the rest', () => {
    const own = { ...tower, after: ['stair'], afterSure: { stair: 'own' as const } };
    expect(movesOf([own, stair, rods], { 'a-1': ['rods', 'stair', 'tower'] })).toEqual(['rods']);
    expect(movesOf([blocks, own, stair], { 'a-1': ['stair', 'tower', 'blocks'] })).toEqual(['blocks']);
  });

  it('of the class’s own words are named, and the rest is judged', () => {
    const given = [tray('m1', { step: 1, after: ['m2'] }), tray('m2', { step: 2 }), tray('m3', { step: 3 })];
    const order = orderOf(given, { 'a-1': ['m3', 'm1', 'm2'] });
    expect(order.circles).toEqual([['m1', 'm2']]);
    expect(order.strands()[0]).toMatchObject({ placed: 3, inOrder: 2 });
  });

  it('a material after itself is a circle of one', () => {
    expect(orderOf([tray('m1', { after: ['m1'] })], { 'a-1': ['m1'] }).circles).toEqual([['m1']]);
  });

  it('are not told of what stands on no shelf', () => {
    const given = [tray('m1', { after: ['m2'] }), tray('m2', { after: ['m1'] }), tray('m3')];
    expect(orderOf(given, { 'a-1': ['m3'] }).circles).toEqual([]);
  });

  it('are found by their shortest way round, one for each', () => {
    const graph = makeDigraph(7);
    for (const [from, to] of [
      [0, 1],
      [1, 2],
      [2, 0],
      [0, 2],
      [3, 4],
      [4, 3],
      [2, 3],
      [5, 5],
      [4, 6],
    ] as const)
      graph.add(from, to, 1);
    graph.close();
    const found = components(graph);
    expect([...found.circles].map((circle) => circle.join()).sort()).toEqual(['0,2', '3,4', '5']);
    expect(found.circleOf[6]).toBe(-1);
    const at = (node: number) => found.topological.indexOf(node);
    expect(at(2)).toBeLessThan(at(3));
    expect(at(4)).toBeLessThan(at(6));
  });
});

describe('who comes before whom', () => {
  it('a changed step is the class’s own word, even of a catalogue material', () => {
    const order = orderOf([{ ...tower, step: 70 }, rods], { 'a-1': ['tower', 'rods'] });
    // Published says the tower first (a prerequisite); the step says it comes last: the class's own word counts.
    expect(order.troubles).toMatchObject([{ strand: 'sight: dimension', isSure: true, early: 0, late: 1 }]);
  });

  it('two copies both come first', () => {
    const second = { ...tower, id: 'tower2' };
    expect(movesOf([tower, second, { ...stair, step: null }], { 'a-1': ['tower', 'stair', 'tower2'] })).toEqual(['stair']);
  });

  it('an id of the class comes before the same id of the catalogue', () => {
    const mine = tray('se-tower', { strand: '' });
    const later = tray('m2', { strand: '', after: ['se-tower'] });
    expect(movesOf([mine, later], { 'a-1': ['m2', 'se-tower'] })).toEqual(['m2']);
  });

  it('an id that nobody has says nothing', () => {
    expect(orderOf([tray('m1', { after: ['gone'] }), tray('m2')], { 'a-1': ['m1', 'm2'] }).inversions.isJudged).toBe(false);
  });

  it('a stated pair orders two catalogue materials without a prerequisite', () => {
    const chain = { ...fromCatalogue('ma-thousand-chain', 'chain'), ...small };
    const frame = { ...fromCatalogue('ma-frame-small', 'frame'), ...small };
    expect(frame.after).not.toContain('ma-thousand-chain');
    expect(movesOf([chain, frame], { 'a-1': ['frame', 'chain'] })).toEqual(['frame']);
  });
});

describe('where moves go', () => {
  it('not beyond the smallest child’s reach while a board she reaches has room', () => {
    const levels = [
      { id: 'a-1', surface: 1280 },
      { id: 'a-2', surface: 700 },
      { id: 'a-3', surface: 350 },
    ];
    const materials = [tray('m1', { step: 1 }), tray('m2', { step: 2 }), tray('n', { strand: '' })];
    const order = orderOf(materials, { 'a-1': ['n'], 'a-2': ['m2'], 'a-3': ['m1'] }, { pieces: [shelf('a', { height: 1300, levels })] });
    expect(order.strands()[0]?.moves).toEqual([]);
    expect(order.strands()[1]?.moves).toEqual([{ material: 'm2', to: { piece: 'a', side: 'front', level: 'a-3', x: 250 } }]);
  });

  it('gives the bare top as no level', () => {
    const pieces = [shelf('a', { height: 700, levels: [{ id: 'a-2', surface: 60 }] })];
    const placements = [
      { material: 'm2', piece: 'a', level: null, x: 0 },
      { material: 'm1', piece: 'a', level: null, x: 400 },
    ];
    const order = measuresOf(
      buildScene(plainRoom({ pieces, materials: [tray('m1', { step: 1 }), tray('m2', { step: 2 })], placements })),
    ).order();
    expect(order.strands()[0]?.moves).toEqual([{ material: 'm2', to: { piece: 'a', side: 'front', level: null, x: 650 } }]);
  });
});

describe('reading a side', () => {
  const at = (id: string, board: number, x: number, width: number | null = 200) => ({ id, board, x, width });
  const read = (reading: 'rows' | 'columns', direction: 'ltr' | 'rtl', ...trays: ReturnType<typeof at>[]) =>
    inReadingOrder(trays, reading, direction)
      .map(({ id }) => id)
      .join('');

  it('goes row by row, or column by column', () => {
    const trays = [at('a', 0, 0), at('b', 0, 300), at('c', 1, 0), at('d', 1, 300)];
    expect(read('rows', 'ltr', ...trays)).toBe('abcd');
    expect(read('columns', 'ltr', ...trays)).toBe('acbd');
    expect(read('rows', 'rtl', ...trays)).toBe('badc');
    expect(read('columns', 'rtl', ...trays)).toBe('bdac');
  });

  it('takes trays that begin under the first half of the leading one for one column', () => {
    expect(read('columns', 'ltr', at('a', 0, 20), at('b', 0, 300), at('c', 1, 0), at('d', 1, 290))).toBe('acbd');
    expect(read('columns', 'ltr', at('a', 0, 0, 500), at('b', 1, 0, 100), at('c', 1, 150, 100), at('d', 1, 300, 100))).toBe('abcd');
  });
});

describe('packing a board', () => {
  it('pushes only as far as it must', () => {
    const things = [0, 100, 600].map((x) => ({ x, width: 200 }));
    expect(nudge(things, 1000, 50)).toEqual([0, 250, 600]);
    expect(nudge(things, 700, 50)).toEqual([0, 250, 500]);
    expect(nudge([{ x: -40, width: 200 }], 1000, 50)).toEqual([0]);
  });

  it('keeps the wanted gap if it can, else what there is', () => {
    expect(gapThatFits([200, 200], 500, 50)).toBe(50);
    expect(gapThatFits([200, 200], 420, 50)).toBe(20);
    expect(gapThatFits([200, 200], 399, 50)).toBeNull();
    expect(spread([200, 200], 1000, 50)).toEqual({ xs: [200, 600], gap: 200 });
    expect(spread([200, 200], 460, 50)).toEqual({ xs: [5, 255], gap: 50 });
    expect(spread([200, 200], 399, 50)).toBeNull();
  });
});
