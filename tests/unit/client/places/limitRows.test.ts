import { describe, expect, it } from 'vitest';
import { scaleFor } from '#client/places/limitRows.tsx';
import { limitRowsOf } from '#client/places/limitRowsOf.ts';
import type { PlacesLine } from '#client/places/placesLine.ts';

const line = { enrolled: 24, byArea: 23, byWork: 26, byAdults: null, byGroup: 24, year: [] } as unknown as PlacesLine;

describe('the staff of children', () => {
  it.each([
    [980, 24],
    [560, 24],
    [340, 28],
    [340, 120],
  ])('keeps to %i px with %i children, its numbers apart', (width, children) => {
    const scale = scaleFor(width, children);
    expect(scale.most).toBeGreaterThan(children);
    expect(scale.at(0)).toBeGreaterThan(0);
    expect(scale.at(scale.most)).toBeLessThan(width);
    expect(scale.numberEvery * scale.perChild).toBeGreaterThanOrEqual(26);
  });
});

describe('the ways of asking how many', () => {
  it('stand in their order, each short that takes fewer than are enrolled', () => {
    const rows = limitRowsOf({ line, inForce: null, other: null, units: 'metric', ages: [] });
    expect(rows.map(({ title, value, isShort }) => [title, value, isShort])).toEqual([
      ['Children', 24, false],
      ['Places to work', 26, false],
      ['Adults', null, false],
      ['Largest group', 24, false],
    ]);
  });

  it('say how many of each age are enrolled', () => {
    const [children] = limitRowsOf({ line, inForce: null, other: null, units: 'metric', ages: [62, 36, 40, 50] });
    expect(children?.sub).toBe('enrolled: 2 aged 3, 1 aged 4, 1 aged 5');
  });

  it('leave out what no rule asks', () => {
    const bare = { ...line, byWork: null, byGroup: null } as PlacesLine;
    expect(limitRowsOf({ line: bare, inForce: null, other: null, units: 'metric', ages: [] }).map(({ title }) => title)).toEqual([
      'Children',
      'Adults',
    ]);
  });
});
