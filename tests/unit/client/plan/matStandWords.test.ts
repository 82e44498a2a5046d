import { expect, it } from 'vitest';
import { matStandWords } from '#client/plan/matStandWords.ts';

it.each([
  ['', 'mat stand', 'stand'],
  ['mat stand', 'mat stand', 'stand'],
  ['Mats', 'mat stand', 'stand'],
  ['rolled mats', 'rolled mats', 'rolled'],
])('a stand called "%s" is never written as a mat: "%s", or short "%s"', (name, whole, short) => {
  expect(matStandWords(name)).toEqual([whole, short]);
});
