import { describe, expect, it } from 'vitest';
import {
  type Bend,
  changeDiagonals,
  changeWall,
  type Draft,
  draftOf,
  emptyDraft,
  insertWall,
  isUntouched,
  newWall,
  takeWallOut,
} from '#client/survey/draft.ts';
import { sayChange, sayOpen, sayTrouble, sayTurn, sayWalk, sayWallTurned } from '#client/survey/saySurvey.ts';
import { changesOf, hasToSpread, isMistake, layoutOf, turnedOf, walkOf } from '#client/survey/walk.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';

function walked(...walls: readonly [length: number | null, bend?: Bend, angle?: number][]): Draft {
  return {
    ...emptyDraft(),
    walls: walls.map(([length, bend = 'right', angle = 90], i) => ({ corner: `c${i + 1}`, length, drawn: null, bend, angle })),
  };
}
const across = (draft: Draft, ...diagonals: readonly [from: string, to: string, length: number][]): Draft => ({
  ...draft,
  diagonals: diagonals.map(([from, to, length], i) => ({ key: `k${i}`, from, to, length })),
});
/** An L of six walls with 0.03 m too much to the west and 0.01 m to the north. */
const corner = walked([6000], [3000], [2000, 'left'], [2000], [4030], [5010]);

describe('a walk round six walls', () => {
  const walk = walkOf(corner);
  it('comes round, and says how far it is open', () => {
    expect([walk.isRound, walk.how, walk.perimeter]).toEqual([true, 'lengths', 22040]);
    expect(walk.open?.x).toBeCloseTo(-30, 6);
    expect(walk.open?.y).toBeCloseTo(-10, 6);
    expect(sayWalk(walk, 'metric')).toBe('0.03 m open: 0.03 m west, 0.01 m north; 1 in 697 of the way round.');
    expect(sayTrouble(walk, 'metric')).toBeNull();
  });
  it('says what spreading changes at each wall before it is spread', () => {
    // By hand, along each direction: 30 mm to the east over 12.03 m, 10 mm to the south over 10.01 m.
    const byHand = [
      (30 * 6000) / 12030,
      (10 * 3000) / 10010,
      (-30 * 2000) / 12030,
      (10 * 2000) / 10010,
      (-30 * 4030) / 12030,
      (-10 * 5010) / 10010,
    ];
    changesOf(walk).forEach((change, i) => {
      // In whole mm, which add up to the misclosure.
      expect(Math.abs((change ?? Number.NaN) - (byHand[i] ?? 0))).toBeLessThan(1);
    });
    expect(changesOf(walk).map((change) => sayChange(change ?? 0, 'metric'))).toEqual([
      '+0.015 m',
      '+0.003 m',
      '−0.005 m',
      '+0.002 m',
      '−0.01 m',
      '−0.005 m',
    ]);
  });
  it('keeps every corner square', () => {
    const at = (i: number) => walk.spread?.[i % 6] ?? { x: Number.NaN, y: Number.NaN };
    for (const i of [0, 2, 4]) expect(at(i).y).toBeCloseTo(at(i + 1).y, 9);
    for (const i of [1, 3, 5]) expect(at(i).x).toBeCloseTo(at(i + 1).x, 9);
    expect(turnedOf(walk).every((by) => by === null)).toBe(true);
  });
  it('turns walls where an angle was typed, and says by how much', () => {
    const typed = walkOf(walked([6000], [3000, 'angle', 91], [6000, 'angle', 89], [3000]));
    expect(typed.how).toBe('compass');
    expect(turnedOf(typed).map((by) => sayWallTurned(by))).toContainEqual(
      expect.stringMatching(/^turns (less than )?0\.\d+° (right|left)$/),
    );
  });
  it('lays the last wall over the gap as long as it is not spread', () => {
    expect(layoutOf(walk, false)?.[5]).toEqual({ x: expect.closeTo(-30, 6), y: expect.closeTo(5000, 6) });
    expect(layoutOf(walk, true)).toBe(walk.spread);
  });
});

it('turns the words with the sheet', () => {
  expect(sayOpen({ x: 20, y: 0 }, 10_000, 'metric', 90)).toBe('0.02 m open: 0.02 m south; 1 in 500 of the way round.');
  expect(sayOpen({ x: 0.3, y: 0 }, 10_000, 'metric')).toBe('It closes to the millimetre.');
  expect(sayOpen({ x: 0, y: -4 }, 10_000, 'metric')).toContain('0.004 m north');
});

describe('before it has come round', () => {
  it.each([
    ['nothing typed', walked([null]), /Begin at a corner/],
    ['two walls', walked([4000], [3000]), /So far the walk ends 5.00 m from where it began, and has turned 180° of 360° to the right/],
    ['a gap in the walls', walked([4000], [null], [4000]), /Wall 2 is not typed yet/],
    ['one turn the wrong way', walked([4000], [3000], [4000, 'left'], [3000]), /So far .* 180° of 360°/],
    ['too many turns', walked([4000], [3000], [4000], [3000], [1000]), /add up to 450° .* 90° too many/],
  ])('%s', (_, draft, words) => {
    const walk = walkOf(draft);
    expect(sayWalk(walk, 'metric')).toMatch(words);
    expect(layoutOf(walk, false)).toBeNull();
  });
});

describe('what is wrong', () => {
  it('is too much for the tape, and the wall that runs that way is named', () => {
    const walk = walkOf(walked([4000], [3000], [3000, 'angle', 100], [3000, 'angle', 80]));
    expect(isMistake(walk)).toBe(true);
    expect(sayTrouble(walk, 'metric')).toMatch(/too much for the tape/);
  });
  it('is one wall, once there are diagonals: typed 4.20, the others say 4.02', () => {
    const diagonal = Math.hypot(4020, 3000);
    const walk = walkOf(across(walked([4020], [3000], [4200], [3000]), ['c1', 'c3', diagonal], ['c2', 'c4', diagonal]));
    expect(walk.how).toBe('squares');
    expect(sayTrouble(walk, 'metric')).toBe('Wall 3 fits badly: typed 4.20 m, the others say 4.02 m. Tape it again before spreading.');
    expect(isMistake(walk)).toBe(true);
  });
});

describe('angles by diagonals', () => {
  const bent = walked(
    [5000],
    [Math.hypot(1000, 4000), 'right-diagonals'],
    [Math.hypot(5000, 1000), 'right-diagonals'],
    [Math.hypot(1000, 3000), 'right-diagonals'],
  ).walls.map((wall) => ({ ...wall, bend: 'right-diagonals' as const }));
  const draft: Draft = { ...emptyDraft(), walls: bent };
  it('are not known without one, and it is said which corners swing', () => {
    const walk = walkOf(draft);
    expect(walk.isRound).toBe(false);
    expect(sayWalk(walk, 'metric')).toMatch(/can still swing: tape a diagonal/);
  });
  it('stand with two', () => {
    const walk = walkOf(across(draft, ['c1', 'c3', Math.hypot(6000, 4000)], ['c2', 'c4', 5000]));
    expect([walk.isRound, walk.how, walk.fit?.redundancy]).toEqual([true, 'squares', 1]);
    expect(walk.spread?.[2]).toEqual({ x: expect.closeTo(6000, 3), y: expect.closeTo(4000, 3) });
    expect(sayTrouble(walk, 'metric')).toBeNull();
    // atan(4) by the coordinates.
    expect(sayTurn(walk, 0)).toBe('76° right');
  });
  it('say what a typed turn becomes', () => {
    const walk = walkOf(across(walked([4000], [3000], [4000], [3000]), ['c1', 'c3', 5010]));
    expect(sayTurn(walk, 0)).toMatch(/^fitted 89\.\d° right, −0\.\d°$/);
    expect(sayTurn(walkOf(corner), 0)).toBeNull();
  });
});

it('makes a wall that could not be taped from the others', () => {
  const walk = walkOf(walked([4000], [3000], [null], [3000]));
  expect(sayWalk(walk, 'metric')).toBe('Wall 3 was not taped: the others make it 4.00 m.');
  expect(layoutOf(walk, false)?.length).toBe(4);
});

it('goes round to the left as well', () => {
  const walk = walkOf(walked([3000, 'left'], [4000, 'left'], [3000, 'left'], [4000, 'left']));
  expect([walk.isRound, walk.isLeftward]).toEqual([true, true]);
});

describe('spreading', () => {
  const rectangle = walked([4000], [3000], [4000], [3000]);
  it('is for a walk that is open, and for diagonals that say otherwise', () => {
    expect(hasToSpread(walkOf(corner))).toBe(true);
    expect(hasToSpread(walkOf(across(rectangle, ['c1', 'c3', 5020])))).toBe(true);
  });

  it('has nothing to do where the walk closes and the diagonals agree', () => {
    expect(hasToSpread(walkOf(rectangle))).toBe(false);
    const taped = walkOf(across(rectangle, ['c1', 'c3', 5000], ['c2', 'c4', 5000]));
    expect([taped.how, (taped.fit?.redundancy ?? 0) > 0, hasToSpread(taped)]).toEqual(['squares', true, false]);
  });

  it('is not offered before the walk has come round', () => {
    expect(hasToSpread(walkOf(walked([4000], [3000])))).toBe(false);
  });
});

describe('the rows', () => {
  it('of a room on the sheet say how it is drawn, and keep what was taped', () => {
    const { room } = plainRoom({
      room: { survey: { walls: [{ from: 'c2', length: 4990, turn: 90 }], diagonals: [{ from: 'c1', to: 'c3', length: 7810 }] } },
    });
    const draft = draftOf(room);
    expect(draft.walls.map(({ corner: id, length, drawn, bend }) => [id, length, drawn, bend])).toEqual([
      ['c1', null, 6000, 'right'],
      ['c2', 4990, 5000, 'right'],
      ['c3', null, 6000, 'right'],
      ['c4', null, 5000, 'right'],
    ]);
    expect(draft.diagonals.map(({ from, to, length }) => [from, to, length])).toEqual([['c1', 'c3', 7810]]);
    expect(draft.openings.map(({ key, wall, offset }) => [key, wall, offset])).toEqual([['d1', 'c1', 400]]);
    expect(isUntouched(draft, room)).toBe(true);
    expect(isUntouched(changeWall('c1', { length: 6010 })(draft), room)).toBe(false);
  });
  it('take a wall in and out; what stood on it goes to the wall before, nothing is lost', () => {
    const draft = draftOf(plainRoom().room);
    const made = { ...newWall(), corner: 'c9' };
    const more = insertWall('c1', made)(draft);
    expect(more.walls.map(({ corner: id }) => id)).toEqual(['c1', 'c9', 'c2', 'c3', 'c4']);
    const onIt = { ...more, openings: more.openings.map((one) => ({ ...one, wall: 'c9' })) };
    const less = takeWallOut('c9')(changeDiagonals(() => [{ key: 'k', from: 'c9', to: 'c3', length: 5000 }])(onIt));
    expect(less.walls.map(({ corner: id }) => id)).toEqual(['c1', 'c2', 'c3', 'c4']);
    expect(less.openings.map(({ wall }) => wall)).toEqual(['c1']);
    expect(less.diagonals).toEqual([]);
  });
});
