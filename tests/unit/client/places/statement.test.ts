import { describe, expect, it } from 'vitest';
import type { PlacesLine } from '#client/places/placesLine.ts';
import { bindingOf, statementOf } from '#client/places/statement.ts';

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
  it('is the least limit that is sure, with its rule', () => {
    expect(bindingOf(line({ byArea: 23, byAreaMost: 23 }), true, 'England')).toBe(
      'What binds for certain: the floor, by the rule in force (England), 23 children.',
    );
    expect(bindingOf(line({ byWork: 19 }), true, 'England')).toBe('What binds for certain: the places to work, a class rule, 19 children.');
    expect(bindingOf(line(nothing), true, 'England')).toBe('');
  });

  it('does not take a lower bound of the mats for a limit', () => {
    expect(bindingOf(line({ byArea: 23, byAreaMost: 23, byWork: 19 }), false, 'England')).toBe(
      'What binds for certain: the floor, by the rule in force (England), 23 children. The places to work may bind sooner: how many mats fit at the very most is not proven.',
    );
  });
});
