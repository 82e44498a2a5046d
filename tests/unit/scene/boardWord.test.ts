import { describe, expect, it } from 'vitest';
import { boardWord, sayOrdinal } from '#model/scene/boardWord.ts';

describe('the name of a board', () => {
  it.each([
    [1, ['top']],
    [2, ['top', 'low']],
    [3, ['top', 'middle', 'low']],
    [4, ['top', '2nd', '3rd', 'low']],
    [5, ['top', '2nd', '3rd', '4th', 'low']],
  ])('of %d', (count, words) => {
    expect(Array.from({ length: count }, (_, index) => boardWord(index, count))).toEqual(words);
  });

  it('counts as people do', () => {
    expect([1, 2, 3, 4, 11, 12, 13, 21, 22, 103, 111].map(sayOrdinal)).toEqual([
      '1st',
      '2nd',
      '3rd',
      '4th',
      '11th',
      '12th',
      '13th',
      '21st',
      '22nd',
      '103rd',
      '111th',
    ]);
  });
});
