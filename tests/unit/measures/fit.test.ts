import { describe, expect, it } from 'vitest';
import { fromCatalogue } from '#model/catalogue/catalogue.ts';
import { applyEdits } from '#model/findings/applyEdits.ts';
import { type FitOption, whereFits } from '#model/measures/fit.ts';
import { measuresOf } from '#model/measures/measures.ts';
import { nextOf, stepOf, threadOf } from '#model/measures/steps.ts';
import { buildScene } from '#model/scene/build.ts';
import type { Classroom, ClassroomInput } from '#model/schema/types.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';
import { placed, shelf, tray } from '#tests/support/shelfRoom.ts';

type Materials = NonNullable<ClassroomInput['materials']>;
const shelved = (materials: Materials, boards: Parameters<typeof placed>[0], change: PlainRoomChange = {}) =>
  plainRoom({ pieces: [shelf('a', { boards: 2 })], materials, placements: placed(boards), ...change });
const fitsOf = (classroom: Classroom, id: string): FitOption[] => {
  const scene = buildScene(classroom);
  return whereFits(scene, measuresOf(scene).order(), id);
};
const say = ({ board, place, fits }: FitOption): string => `${board.level?.id} ${place} ${fits}`;
const steps = (...list: number[]): Materials => list.map((step, i) => tray(`m${i + 1}`, { step }));

describe('where would it fit', () => {
  it('puts the gap between what comes before and what comes after first', () => {
    const options = fitsOf(shelved(steps(1, 2, 3), { 'a-1': ['m1', ['m3', 600]] }), 'm2');
    expect(options.map((option) => `${say(option)} ${option.isInStep}`)).toEqual([
      'a-1 2 as it is true',
      'a-1 3 as it is false',
      'a-2 1 as it is false',
      'a-1 1 pushed false',
    ]);
    expect(options.map(({ wrongSide }) => wrongSide && `${wrongSide.material.id} comes ${wrongSide.comes}`)).toEqual([
      null,
      'm3 comes after',
      'm3 comes after',
      'm1 comes before',
    ]);
    const [best] = options;
    expect(best).toMatchObject({ from: 250, free: 300, place: 2, isInReach: true, isHere: false, cuts: null });
    expect(best?.behind?.id).toBe('m1');
    expect(best?.ahead?.id).toBe('m3');
    expect(best?.placements).toEqual([{ material: 'm2', piece: 'a', side: 'front', level: 'a-1', x: 250, y: 0, turned: false }]);
  });

  it('lists every gap of every children’s board once', () => {
    const classroom = shelved(
      steps(1, 2, 3, 4),
      { 'a-1': ['m1', 'm2'], 'b-1': ['m4'] },
      { pieces: [shelf('a', { boards: 2 }), shelf('b', { x: 4500, for: 'adults' })] },
    );
    const options = fitsOf(classroom, 'm3');
    expect(options.map((o) => `${o.board.level?.id} ${o.place}`).sort()).toEqual(['a-1 1', 'a-1 2', 'a-1 3', 'a-2 1']);
  });

  it('comes among its own area before another, whatever the steps', () => {
    const classroom = shelved(
      [
        tray('s1', { area: 'sensorial' }),
        tray('p1', { area: 'practical-life' }),
        tray('p2', { area: 'practical-life', strand: 'pouring', step: 2 }),
      ],
      { 'a-1': ['s1'], 'b-1': ['p1'] },
      { pieces: [shelf('a', { boards: 1 }), shelf('b', { x: 4500, boards: 1 })] },
    );
    const options = fitsOf(classroom, 'p2');
    expect(options[0]).toMatchObject({ isAmongItsArea: true, isStepJudged: false });
    expect(options[0]?.side.piece.id).toBe('b');
    expect(options.find(({ side }) => side.piece.id === 'a')?.isAmongItsArea).toBe(false);
    const judged = { ...classroom, options: { 'order/sequence': { practicalLife: true } } };
    expect(fitsOf(judged, 'p2').every(({ isStepJudged }) => isStepJudged)).toBe(true);
  });

  it('offers no board to what stands on the floor', () => {
    // A wash stand: common practice, no source.
    const stand = fromCatalogue('pl-wash-hands', 'stand');
    expect(stand).toMatchObject({ work: 'standing', height: 650 });
    expect(fitsOf(shelved([...steps(1), stand], { 'a-1': ['m1'] }), 'stand')).toEqual([]);
    expect(fitsOf(shelved([{ ...stand, height: 150 }], {}), 'stand')).not.toEqual([]);
  });

  it('says by how much it is short', () => {
    const classroom = shelved([...steps(1, 2), tray('w', { width: 1000, depth: 340, height: 500, strand: '' })], {
      'a-1': ['m1'],
      'a-2': ['m2'],
    });
    const bottom = fitsOf(classroom, 'w').filter((o) => o.board.level?.id === 'a-2');
    // The bottom board is 1160 long, 320 deep and 270 clear; the tray beside it takes 200.
    expect(bottom[0]).toMatchObject({ fits: 'no', shortBy: { width: 40, depth: 20, height: 230 }, placements: [] });
  });

  it('turns a tray that is too deep if it then fits', () => {
    const [best] = fitsOf(shelved([tray('m1', { width: 200, depth: 400 })], {}), 'm1');
    expect(best).toMatchObject({ fits: 'as it is', isTurned: true });
    expect(best?.placements[0]?.turned).toBe(true);
  });

  it('knows where it stands now and leaves itself out of the way', () => {
    const options = fitsOf(shelved(steps(1, 2, 3), { 'a-1': ['m1', 'm2', 'm3'] }), 'm2');
    const here = options.filter(({ isHere }) => isHere);
    expect(here).toHaveLength(1);
    expect(here[0]).toMatchObject({ place: 2, isInStep: true, fits: 'as it is' });
    expect(options[0]).toBe(here[0]);
  });

  it('says which thread it would cut, and prefers the end of it', () => {
    const options = fitsOf(shelved([...steps(1, 2), tray('n', { strand: 'touch' })], { 'a-1': ['m1', ['m2', 600]] }), 'n');
    const between = options.find((o) => o.board.level?.id === 'a-1' && o.place === 2);
    expect(between?.cuts).toBe('sight');
    expect(options[0]?.cuts).toBeNull();
    expect(options.indexOf(between as FitOption)).toBe(options.length - 1);
  });

  it('puts what the smallest child does not reach behind what she reaches', () => {
    const high = shelf('a', {
      height: 1300,
      levels: [
        { id: 'a-1', surface: 1280 },
        { id: 'a-2', surface: 400 },
      ],
    });
    const [best, ...rest] = fitsOf(shelved(steps(1), {}, { pieces: [high] }), 'm1');
    expect(best).toMatchObject({ isInReach: true });
    expect(best?.board.level?.id).toBe('a-2');
    expect(rest.at(-1)).toMatchObject({ isInReach: false });
  });

  it('reads from the right where the class does', () => {
    const classroom = shelved(
      steps(1, 2, 3),
      {
        'a-1': [
          ['m1', 1000],
          ['m3', 0],
        ],
      },
      { display: { readingDirection: 'rtl' } },
    );
    const [best] = fitsOf(classroom, 'm2');
    expect(best).toMatchObject({ place: 2, isInStep: true });
    expect(best?.behind?.id).toBe('m1');
    expect(best?.placements[0]?.x).toBe(750);
  });

  it('pushes the others only where it must, and what it proposes puts it there', () => {
    const wide = steps(1, 3, 2).map((m) => ({ ...m, width: 340 }));
    const classroom = shelved(wide, {
      'a-1': [
        ['m1', 0],
        ['m2', 400],
      ],
    });
    const [best] = fitsOf(classroom, 'm3');
    expect(best).toMatchObject({ fits: 'pushed', isInStep: true, place: 2 });
    const edits = (best?.placements ?? []).map((placement) => ({ do: 'place' as const, placement }));
    const after = buildScene(applyEdits(classroom, 'a1', edits));
    expect(after.sides[0]?.boards[0]?.trays.map((t) => [t.material.id, t.placement.x])).toEqual([
      ['m1', 0],
      ['m3', 390],
      ['m2', 780],
    ]);
  });

  it('finds nothing for what has no tray or is not there', () => {
    const classroom = shelved([tray('m1', { stands: 'none' })], {});
    expect(fitsOf(classroom, 'm1')).toEqual([]);
    expect(fitsOf(classroom, 'nobody')).toEqual([]);
  });
});

describe('the step of a material', () => {
  const tower = fromCatalogue('se-tower', 'tower');
  const stair = fromCatalogue('se-broad-stair', 'stair');
  const blocks = fromCatalogue('se-cyl-diam', 'blocks');
  const classroom = shelved([blocks, tower, stair], { 'a-1': ['blocks', ['tower', 700]], 'a-2': ['stair'] });
  const scene = buildScene(classroom);

  it('is told within the class: what comes before, what comes after, where it stands', () => {
    expect(stepOf(scene, 'tower')).toMatchObject({ number: 2, steps: 3, place: 'top board, 2nd' });
    expect(stepOf(scene, 'tower')?.comesAfter.map((m) => m.id)).toEqual(['blocks']);
    expect(stepOf(scene, 'tower')?.comesBefore.map((m) => m.id)).toEqual(['stair']);
    expect(stepOf(scene, 'tower')?.missing).toEqual(['Solid insets: cylinders varying in height', 'Spreading and rolling a floor mat']);
    expect(stepOf(scene, 'nobody')).toBeNull();
  });

  it('leads to the tray that a child meets next in the strand', () => {
    const order = measuresOf(scene).order();
    expect(nextOf(order, 'tower')?.material.id).toBe('stair');
    expect(nextOf(order, 'stair')).toBeNull();
    expect(nextOf(order, 'nobody')).toBeNull();
  });

  it('makes a thread, those without a step last', () => {
    const materials = [...classroom.materials, { ...tower, id: 'own', step: null }].reverse();
    expect(threadOf(materials, 'sight: dimension').map((m) => m.id)).toEqual(['blocks', 'tower', 'stair', 'own']);
  });
});
