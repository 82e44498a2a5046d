import { describe, expect, it } from 'vitest';
import { dayOf, waitersOf } from '#client/moveDay/dayOf.ts';
import { pairOf } from '#client/moveDay/pairOf.ts';
import { sayEarly } from '#client/moveDay/sayEarly.ts';
import { sayCaution, sayStep } from '#client/moveDay/sayStep.ts';
import { sameButTicks } from '#client/moveDay/steady.ts';
import type { Classroom } from '#model/schema/types.ts';
import { demoRoom } from '#tests/support/demo/demoRoom.ts';
import { type MovePiece, moveRoom } from '#tests/support/moveRoom.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';

const shelf = (id: string, y: number, more: Partial<MovePiece> = {}): MovePiece => ({
  id,
  kind: 'shelf',
  name: '',
  x: 200,
  y,
  rotation: -90,
  width: 1000,
  depth: 400,
  height: 700,
  anchored: true,
  levels: [
    { id: 'l1', surface: 640 },
    { id: 'l2', surface: 300 },
  ],
  ...more,
});
const three = moveRoom([shelf('s6', 2800), shelf('s4', 1700)], [shelf('s6', 1750), shelf('s4', 700)], {
  materials: [{ id: 'm1', name: 'Spindle box', area: 'mathematics', width: 200, depth: 200, mass: 2 }],
  placed: [[{ material: 'm1', piece: 's4', level: 'l1', x: 0 }], [{ material: 'm1', piece: 's4', level: 'l2', x: 0 }]],
});

function day(classroom: Classroom, moveDay: unknown = null) {
  const [from, to] = classroom.arrangements;
  if (!from || !to) throw new Error('two arrangements');
  return dayOf(classroom, from, to, moveDay);
}
const words = (classroom: Classroom, mats: number | null = null) => {
  const { plan, names, steps } = day(classroom);
  return steps.map(({ step }) => sayStep(step, { plan, names, units: 'metric', mats }));
};

describe('the two arrangements of the day', () => {
  it('from how the room stands to the shown one; when that is shown, to the next', () => {
    const [a1, a2] = three.arrangements;
    if (!a1 || !a2) throw new Error('two arrangements');
    expect(pairOf(three, a2)).toEqual({ from: a1, to: a2 });
    expect(pairOf(three, a1)).toEqual({ from: a1, to: a2 });
    expect(pairOf({ ...three, current: 'a2' }, a2)).toEqual({ from: a2, to: a1 });
    expect(pairOf({ ...three, arrangements: [a1] }, a1)).toBeNull();
  });
});

describe('what can tip', () => {
  const cautions = (anchored: boolean | null) => {
    const changed = {
      ...three,
      arrangements: three.arrangements.map((one) => ({ ...one, pieces: one.pieces.map((piece) => ({ ...piece, anchored })) })),
    };
    const now = day(changed);
    const { plan, names } = now;
    return now.steps.flatMap(({ step }) =>
      step.unit === null ? [] : [[sayCaution(step), sayStep(step, { plan, names, units: 'metric', mats: null }).mind.join(' ')]],
    );
  };

  it('is said with the closed step: what is fastened, and what nobody knows', () => {
    expect(cautions(true).some(([short]) => short?.startsWith('Unfasten it first, and hold it: it can tip'))).toBe(true);
    const unknown = cautions(null).filter(([short]) => short !== '');
    expect(unknown.length).toBeGreaterThan(0);
    for (const [short, whole] of unknown) {
      expect(short).toMatch(/look first whether it is fastened|settle whether it is fastened/i);
      expect(whole).not.toContain('It is not fastened');
    }
  });

  it('is nothing where it stands loose, which the opened step says', () => {
    for (const [short] of cautions(false)) expect(short).toBe('');
    expect(cautions(false).some(([, whole]) => whole?.includes('It is not fastened to the wall there.'))).toBe(true);
  });
});

describe('a step ticked before the one it waits for', () => {
  const ticked = (...done: string[]) => {
    const now = day(three, { 'a1>a2': Object.fromEntries(done.map((id) => [id, { state: 'done', by: 'MK', at: '' }])) });
    return (id: string) => {
      const one = now.steps.find(({ step }) => step.id === id);
      return one ? sayEarly(now, one) : undefined;
    };
  };
  it.each([
    [['move:s6'], 'move:s6', 'Step 2, which it waits for, is not done: is the place free?'],
    [['move:s4'], 'move:s4', 'Step 1, which it waits for, is not done: is it empty?'],
    [['empty:s4', 'move:s4'], 'move:s4', null],
    [['empty:s4', 'move:s4', 'move:s6'], 'move:s6', null],
  ])('%j: asks at %s what may not be so yet', (done, id, words) => {
    expect(ticked(...done)(id)).toBe(words);
  });
});

describe('the steps in words', () => {
  it('as people say them: what, how far, to what it is measured, and what to mind', () => {
    expect(words(three, 10).map(({ title, detail }) => `${title} | ${detail}`)).toEqual([
      'Empty shelf 4 | 1 tray, in the order they go back, crate A',
      'Slide shelf 4 north 1.00 m | two people: to 0.20 m from the north wall, A1 to A2',
      'Slide shelf 6 north 1.05 m | two people: 0.05 m clear of shelf 4',
      'Fill shelf 4 again | crate A',
      'Roll out all 10 mats | mark their corners for the first week',
      'Walk every way with the tape | 0.915 m or more, door to door; open each exit as wide as it goes',
    ]);
    expect(words(three)[1]?.mind).toEqual([
      'Unfasten it from the wall first; from then on it can tip: one of you holds it.',
      'Fasten it to the wall again before anything is put on it: until then it can tip.',
    ]);
  });

  it('turned, carried, exchanged, put away, new, set aside', () => {
    const classroom = moveRoom(
      [shelf('s1', 700), shelf('s2', 1750), shelf('s3', 3000), shelf('s5', 4300, { for: 'adults', name: 'Paper cupboard' })],
      [shelf('s1', 1750), shelf('s2', 700), shelf('s3', 3000, { rotation: 90, x: 3000, width: 1200 }), shelf('s9', 4300)],
    );
    expect(words(classroom, 0).map(({ title, detail }) => `${title} | ${detail}`)).toEqual([
      'Put paper cupboard away | two people: to where it is kept, not before an exit',
      expect.stringMatching(/^Exchange shelf 3 \| two people: for one of 1\.20 m by 0\.40 m; .+/),
      expect.stringMatching(/^Set shelf 1 aside \| two people: to .+, out of the way for a while$/),
      'Slide shelf 2 north 1.05 m | two people: to 0.20 m from the north wall, A1 to A2',
      expect.stringMatching(/^(Slide|Carry) shelf 1 /),
      expect.stringMatching(/^Bring in shelf 9 \| against the west wall, A4 to A5$/),
      'Try whether a mat fits | mark their corners for the first week',
      'Walk every way with the tape | 0.915 m or more, door to door; open each exit as wide as it goes',
    ]);
  });

  it('says of every step of the demo what to do, in no more than a few words a title', () => {
    const demo = plainRoom(demoRoom() as Parameters<typeof plainRoom>[0]);
    for (const { title, detail } of words(demo, 6)) {
      expect(title.length).toBeGreaterThan(8);
      expect(title.length).toBeLessThan(70);
      expect(`${title} ${detail}`).not.toMatch(/undefined|null|NaN|gone/);
    }
  });
});

describe('ticks', () => {
  it('what cannot be done, and which later steps wait for it', () => {
    const now = day(three, { 'a1>a2': { 'move:s4': { state: 'cannot', by: 'MK' } } });
    expect(waitersOf(now, 'move:s4')).toEqual([3, 4, 5, 6]);
    expect(now.steps.map(({ number, heldBy }) => [number, ...heldBy])).toEqual([[1], [2], [3, 2], [4, 2], [5, 2], [6, 2]]);
  });

  it('an order by hand: numbers follow it, and what no longer works is marked', () => {
    const now = day(three, { 'a1>a2:order': { list: ['empty:s4', 'move:s6', 'move:s4', 'fill:s4', 'mats', 'tape'] } });
    expect(now.isHandOrder).toBe(true);
    expect(now.steps.map(({ step, after }) => [step.id, ...after])).toEqual([
      ['empty:s4'],
      ['move:s6', 3],
      ['move:s4', 1],
      ['fill:s4', 3],
      ['mats', 2, 4],
      ['tape', 5],
    ]);
    expect(now.steps.filter(({ trouble }) => trouble).map(({ step, trouble }) => [step.id, trouble?.inTheWay])).toEqual([
      ['move:s6', ['s4']],
    ]);
  });

  it('change nothing that the plan hangs on', () => {
    expect(sameButTicks(three, { ...three, moveDay: { x: 1 }, notes: [] })).toBe(true);
    expect(sameButTicks(three, { ...three, materials: [] })).toBe(false);
    const first = day(three);
    expect(day(three, { 'a1>a2': { mats: { state: 'done' } } }).plan).toBe(first.plan);
  });
});
