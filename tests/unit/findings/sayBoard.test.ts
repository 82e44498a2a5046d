import { describe, expect, it } from 'vitest';
import { sayStrand, sayThings } from '#model/findings/sayBoard.ts';

describe('words of a finding', () => {
  it('writes a strand without a colon of its own', () => {
    expect(sayStrand('sight: dimension')).toBe('sight, dimension');
    expect(sayStrand('numbers to ten')).toBe('numbers to ten');
  });

  it('names up to three things and counts the rest', () => {
    expect(sayThings(['a', 'b'])).toBe('a and b');
    expect(sayThings(['a', 'b', 'c'])).toBe('a, b and c');
    expect(sayThings(['a', 'b', 'c', 'd'])).toBe('a, b and 2 more');
  });
});
