import { expect, it } from 'vitest';
import { fixWords } from '#client/checks/fixWords.ts';
import { labelWith } from '#model/findings/edit.ts';

it.each([
  ['Do it: A to the board', [], { button: 'Do it: A to the board', brings: null }],
  ['12 to the west wall', [], { button: 'Do it: 12 to the west wall', brings: null }],
  [
    'Do it: A to the board.',
    ['a note: it is close.'],
    { button: 'Do it: A to the board', brings: 'It brings with it: a note: it is close.' },
  ],
] as const)('%s', (label, brings, words) => {
  expect(fixWords(labelWith(label, brings))).toEqual(words);
});
