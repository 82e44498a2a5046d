import { describe, expect, it } from 'vitest';
import { sayReading } from '#client/front/readingOrder.ts';

describe('how a front is read', () => {
  const levels = [{ id: 'l1', surface: 300, depth: null, clear: null, setBack: 0 }] as never;
  it.each([
    ['rows', 'ltr', 'read left to right, then down'],
    ['columns', 'rtl', 'read down, then right to left'],
  ] as const)('%s, %s', (reading, direction, said) => {
    expect(sayReading({ levels, reading }, direction)).toBe(said);
  });

  it('is not said of a cupboard without boards', () => {
    expect(sayReading({ levels: [], reading: 'rows' }, 'ltr')).toBe('');
  });
});
