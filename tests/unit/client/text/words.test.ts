import { describe, expect, it } from 'vitest';
import type { Kept } from '#client/session/types.ts';
import { sayAges, sayYears } from '#client/text/sayAges.ts';
import { sayCount } from '#client/text/sayCount.ts';
import { sayKept } from '#client/text/sayKept.ts';

const kept = (change: Partial<Kept> = {}): Kept => ({ here: 'kept', server: 'saved', waiting: 0, trouble: null, ...change });

describe('where the classroom is, in words', () => {
  it.each([
    [kept(), 'here and shared'],
    [kept({ server: 'saving', waiting: 2 }), 'kept here, sharing: 2 changes'],
    [kept({ server: 'offline', waiting: 1 }), 'kept here, not yet shared: 1 change'],
    [kept({ server: 'offline' }), 'kept here, no server in reach'],
    [kept({ server: 'alone' }), 'kept here only'],
    [kept({ here: 'not-yet' }), 'not kept yet'],
    [kept({ here: 'keeping' }), 'being kept …'],
    [kept({ here: 'failed', trouble: 'the device is full' }), 'not kept on this device: the device is full'],
    [kept({ server: 'refused', trouble: 'too large' }), 'kept here, the server refused: too large'],
  ])('%o', (state, text) => {
    expect(sayKept(state).text).toBe(text);
  });

  it('ticks only what is where it should be', () => {
    expect(sayKept(kept()).isWell).toBe(true);
    expect(sayKept(kept({ server: 'offline', waiting: 1 })).isWell).toBe(false);
    expect(sayKept(kept({ here: 'failed' }))).toMatchObject({ isWell: false, isTrouble: true });
  });

  it('never says shared while the device has not even kept it', () => {
    expect(sayKept(kept({ here: 'keeping', server: 'saved' })).text).not.toContain('shared');
  });
});

describe('ages and counts', () => {
  it.each([
    [36, '3'],
    [30, '2½'],
    [6, '½'],
    [40, '3 y 4 m'],
  ])('%i months are "%s" years', (months, text) => {
    expect(sayYears(months)).toBe(text);
  });

  it('says the span of all groups', () => {
    expect(
      sayAges([
        { fromMonths: 48, toMonths: 60 },
        { fromMonths: 36, toMonths: 48 },
      ]),
    ).toBe('ages 3 to 5');
    expect(sayAges([])).toBeNull();
  });

  it.each([
    [0, 'no change'],
    [1, '1 change'],
    [3, '3 changes'],
  ])('counts %i', (count, text) => {
    expect(sayCount(count, 'change')).toBe(text);
  });
});
