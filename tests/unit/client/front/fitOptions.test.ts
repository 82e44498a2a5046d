import { describe, expect, it } from 'vitest';
import { bestInStep, bestOfBoards, bestPlace, fitOptions } from '#client/front/fitOptions.ts';
import { fitTitle, fitWhy, fitWord, sayFitPlace } from '#client/front/sayFit.ts';
import { fitInWords } from '#client/sheets/materials/fitInWords.ts';
import type { FitOption } from '#model/measures/fit.ts';
import { shelfRoom } from './shelf.ts';

const scene = shelfRoom(
  [
    ['a', 'top', 0, 300, 1],
    ['c', 'top', 700, 300, 3],
    ['full', 'mid', 0, 1300, 9],
  ],
  {
    materials: [
      { id: 'a', name: 'First', strand: 'counting', step: 1, width: 300, depth: 250, height: 80 },
      { id: 'b', name: 'Second', strand: 'counting', step: 2, width: 300, depth: 250, height: 80 },
      { id: 'c', name: 'Third', strand: 'counting', step: 3, width: 300, depth: 250, height: 80 },
      { id: 'full', name: 'Long one', strand: 'other', step: 9, width: 1300, depth: 250, height: 80 },
    ],
  },
);
const options = fitOptions(scene, 'b');
const option = (change: Partial<FitOption>): FitOption => ({ ...(options[0] as FitOption), ...change });

describe('where a material would fit', () => {
  it('is best between what it comes after and what comes after it', () => {
    const best = bestPlace(options) as FitOption;
    expect([best.behind?.id, best.ahead?.id]).toEqual(['a', 'c']);
    expect(sayFitPlace(scene, best)).toBe('shelf 1, top');
    expect(fitTitle(scene, best)).toBe('Shelf 1, top board, 2nd place');
    expect(fitWord(best)).toBe('in step');
    expect(fitWhy(best, 'metric')).toBe('In step: right after First. Board at 0.64 m.');
  });

  it('names each board once, its own place left out', () => {
    const boards = bestOfBoards(options).map(({ board }) => board.level?.id);
    expect(new Set(boards).size).toBe(boards.length);
    expect(boards[0]).toBe('top');
    expect(fitOptions(scene, 'a').some(({ isHere }) => isHere)).toBe(false);
  });

  it('offers the same place first in the table, in the panel and when it is put: in step with others slid along before out of step', () => {
    const pushed = option({ fits: 'pushed' });
    const wrong = option({ isInStep: false });
    expect(bestPlace([wrong, pushed])).toBe(pushed);
    expect(bestPlace([wrong])).toBe(wrong);
    expect(fitInWords(scene, [wrong, pushed])).toEqual({ say: 'fits shelf 1, top with room made', verb: 'make room' });
    expect(fitInWords(scene, [wrong])).toEqual({ say: 'fits shelf 1, top, out of step there', verb: 'place it' });
    expect(fitInWords(scene, [option({ isInStep: false, isStepJudged: false })])).toEqual({ say: 'fits shelf 1, top', verb: 'place it' });
  });

  it('does not urge the shelf of another area while its own takes it', () => {
    const foreign = option({ isAmongItsArea: false });
    const own = option({ isInStep: false });
    expect(bestInStep([foreign])).toBe(foreign);
    expect(bestInStep([own, foreign])).toBeNull();
    expect(bestPlace([own, foreign])).toBe(own);
  });

  it('says what speaks against a place', () => {
    expect(fitWord(option({ fits: 'no', shortBy: { width: 80, depth: 0, height: 0 } }))).toBe('too narrow');
    expect(fitWhy(option({ fits: 'no', shortBy: { width: 80, depth: 0, height: 20 } }), 'metric')).toBe(
      '0.08 m too narrow with all trays side by side, 0.02 m not high enough.',
    );
    expect(fitWord(option({ isInReach: false }))).toBe('out of reach');
    expect(fitWord(option({ isInStep: false }))).toBe('out of step');
    expect(fitWord(option({ isInStep: false, isStepJudged: false }))).toBe('fits');
    expect(fitWhy(option({ isInStep: false, isStepJudged: false }), 'metric')).toBe(
      'Right after First. Something stands on the wrong side of it there; practical life is not judged in this class. Board at 0.64 m.',
    );
    expect(fitWord(option({ cuts: 'other' }))).toBe('breaks the thread');
    expect(fitWhy(option({ isInStep: false, cuts: 'other' }), 'metric')).toBe(
      'Right after First. Something stands on the wrong side of it there. It cuts the thread of other. Board at 0.64 m.',
    );
    // The place behind Third, found by the model itself.
    const late = options.find((each) => each.behind?.id === 'c') as FitOption;
    expect(fitWhy(late, 'metric')).toContain(' Third comes after it, but would stand before it.');
    const early = { material: late.behind as NonNullable<typeof late.behind>, comes: 'before' } as const;
    expect(fitWhy(option({ isInStep: false, wrongSide: early }), 'metric')).toContain(' Third comes before it, but would stand after it.');
  });
});
