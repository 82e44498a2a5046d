import { describe, expect, it } from 'vitest';
import { compassWord } from '#client/text/compass.ts';
import { figure } from '#client/text/figure.ts';
import { nameOfArrangement } from '#client/text/nameOfArrangement.ts';
import { capital, sayList } from '#client/text/sayList.ts';

describe('words', () => {
  it.each([
    [[], ''],
    [['4'], '4'],
    [['4', '6'], '4 and 6'],
    [['4', '6', '7', '12'], '4, 6, 7 and 12'],
  ])('%j are listed as "%s"', (words, said) => expect(sayList(words)).toBe(said));

  it('begin a sentence', () => expect([capital('shelf 7'), capital('')]).toEqual(['Shelf 7', '']));

  it('say where something lies, the top of the sheet north', () => {
    const way = (x: number, y: number): string => compassWord({ x, y });
    expect([way(1, 0), way(1, 1), way(0, 1), way(-1, 0), way(-1, -1), way(0, -1)]).toEqual([
      'east',
      'south-east',
      'south',
      'west',
      'north-west',
      'north',
    ]);
  });

  it('leave out the unit that the title says, feet and inches keep their marks', () => {
    expect(figure(740, 'metric')).toBe('0.74');
    expect(figure(1219.2, 'imperial')).toContain("4'");
  });

  it('name an arrangement without a name', () => {
    expect([nameOfArrangement({ name: 'Spring' }), nameOfArrangement({ name: '' })]).toEqual(['Spring', 'without a name']);
  });
});
