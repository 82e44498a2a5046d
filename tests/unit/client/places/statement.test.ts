import { describe, expect, it } from 'vitest';
import type { PlacesLine } from '#client/places/placesLine.ts';
import { statementOf } from '#client/places/statement.ts';

const line = (change: Partial<PlacesLine>): PlacesLine =>
  ({ places: 24, binding: 'area', byArea: 24, byAreaMost: 24, byWork: 24, byAdults: 24, enrolled: 24, ...change }) as PlacesLine;

describe('the binding limit in words', () => {
  it.each([
    [line({}), 'The floor takes 24. 24 are enrolled: not one place over.'],
    [line({ places: 22, binding: 'work', byWork: 22 }), 'There are 22 places to work. 24 are enrolled: 2 too many.'],
    [line({ places: 16, binding: 'adults', enrolled: 15 }), 'The adults may look after 16. 15 are enrolled: 1 place over.'],
    [line({ places: 20, binding: 'group', enrolled: 15 }), 'A group may have 20 children. 15 are enrolled: 5 places over.'],
    [line({ places: 18, byArea: 18, byAreaMost: 26 }), 'The floor takes 18 to 26. 24 are enrolled: it depends on the open questions.'],
    [line({ places: 18, byArea: 18, byAreaMost: 20 }), 'The floor takes 18 to 20. 24 are enrolled: 4 too many.'],
    [line({ places: null, binding: null }), 'How many children the room takes cannot be told yet.'],
  ])('%#: %s', (given, words) => {
    expect(statementOf(given, true)).toBe(words);
  });

  it('claims no shortage of work places while the mats are only a lower bound', () => {
    expect(statementOf(line({ places: 18, binding: 'work', byWork: 18 }), false)).toBe(
      'There are at least 18 places to work. 24 are enrolled: a place for 6 more was not found.',
    );
  });
});
