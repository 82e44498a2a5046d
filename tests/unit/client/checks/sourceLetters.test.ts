import { expect, it } from 'vitest';
import { sourceLetters } from '#client/checks/sourceLetters.ts';
import { finding } from './finding.ts';

it('letters sources in the order in which they appear, each once', () => {
  const letters = sourceLetters([finding({ sources: ['A01', 'A02'] }), finding({ sources: ['A02', 'class rule'] })]);
  expect([...letters]).toEqual([
    ['A01', 'a'],
    ['A02', 'b'],
    ['class rule', 'c'],
  ]);
});

it('goes on after z', () => {
  const many = finding({ sources: Array.from({ length: 28 }, (_, i) => `S${i}`) });
  expect([...sourceLetters([many]).values()].slice(25)).toEqual(['z', 'aa', 'ab']);
});
