import { expect, it } from 'vitest';
import { MOST_NAME, sayFull } from '#client/frame/nameLength.ts';

it.each([
  [0, null],
  [MOST_NAME - 16, null],
  [MOST_NAME - 15, '15 letters left of 80'],
  [MOST_NAME - 1, '1 letter left of 80'],
  [MOST_NAME, 'full: 80 letters are the most'],
])('a name of %i letters says %s', (letters, said) => expect(sayFull('w'.repeat(letters))).toBe(said));
