import { describe, expect, it } from 'vitest';
import type { PlacesLine } from '#client/places/placesLine.ts';
import { sayBinding, statementOf } from '#client/places/statement.ts';

const line = (change: Partial<PlacesLine>): PlacesLine =>
  ({ byArea: 24, byAreaMost: 24, byWork: 24, byAdults: 24, byGroup: null, enrolled: 24, ...change }) as PlacesLine;
const nothing = { byArea: null, byAreaMost: null, byWork: null, byAdults: null, byGroup: null };

describe('the limits that count, in one sentence', () => {
  it.each([
    [line({}), 'The floor takes 24; 24 are enrolled: not one place over.'],
    [line({ byWork: 22 }), 'There are 22 places to work; 24 are enrolled: no place to work for 2.'],
    [line({ byAdults: 16, enrolled: 15 }), 'The adults may look after 16; 15 are enrolled: 1 place over.'],
    [line({ byGroup: 20, enrolled: 15 }), 'A group may have 20 children; 15 are enrolled: 5 places over.'],
    [
      line({ byArea: 18, byAreaMost: 26 }),
      'The floor takes 18 to 26; 24 are enrolled: whether the floor takes them all depends on the open questions.',
    ],
    [line({ byArea: 18, byAreaMost: 20 }), 'The floor takes 18 to 20; 24 are enrolled: 4 to 6 too many for the floor.'],
    [line(nothing), 'How many children the room takes cannot be told yet.'],
  ])('%#: %s', (given, words) => {
    expect(statementOf(given, true)).toBe(words);
  });

  it('puts a must before a class rule that asks for more', () => {
    expect(statementOf(line({ byArea: 23, byAreaMost: 23, byWork: 19 }), true)).toBe(
      'The floor takes 23, there are 19 places to work; 24 are enrolled: 1 too many for the floor, no place to work for 5.',
    );
  });

  it('names the least limit that is sure beside work places that are only a lower bound', () => {
    expect(statementOf(line({ byArea: 23, byAreaMost: 23, byWork: 19 }), false)).toBe(
      'The floor takes 23, there are at least 19 places to work; 24 are enrolled: 1 too many for the floor, a place to work for 5 more was not found.',
    );
    expect(statementOf(line({ byArea: 30, byAreaMost: 30, byAdults: null, byWork: 18 }), false)).toBe(
      'The floor takes 30, there are at least 18 places to work; 24 are enrolled: a place to work for 6 more was not found.',
    );
    expect(statementOf(line({ byArea: 30, byAreaMost: 30, byAdults: null, byWork: 26 }), false)).toBe(
      'The floor takes 30, there are at least 26 places to work; 24 are enrolled: at least 2 places over.',
    );
  });
});

describe('what binds', () => {
  it('is said by the rule set, and apart from it by the places to work, the same on both sheets', () => {
    expect(sayBinding(line({ byArea: 23, byAreaMost: 23, byWork: 19 }), true, 'England')).toEqual([
      'By the rule set England (the licence) the room takes 23: the floor binds.',
      'By places to work in this layout it takes 19, which is no licensing limit.',
    ]);
    expect(sayBinding(line({ byAdults: 16, byWork: null }), true, 'England')).toEqual([
      'By the rule set England (the licence) the room takes 16: the adults bind.',
    ]);
    expect(sayBinding(line(nothing), true, 'England')).toEqual(['How many children the room takes by the rule set cannot be told yet.']);
  });

  it('does not take a lower bound of the mats for a limit', () => {
    expect(sayBinding(line({ byArea: 23, byAreaMost: 23, byWork: 19 }), false, 'England')[1]).toBe(
      'By places to work in this layout 19 were found, which is no licensing limit; that no more can be had is not proven.',
    );
  });

  it('says why the floor takes between two numbers', () => {
    expect(sayBinding(line({ byArea: 20, byAreaMost: 22, byWork: null }), true, 'England')).toEqual([
      'By the rule set England (the licence) the room takes 20 to 22: the floor binds.',
      'Which of them hangs on what your authority has not answered yet.',
    ]);
  });
});
