import { expect, it } from 'vitest';
import { leadSentence } from '#client/checks/leadSentence.ts';

it.each([
  [
    'Narrow beside table 2, for 1.20 m. Every front is reached. So be it.',
    'Narrow beside table 2, for 1.20 m.',
    'Every front is reached. So be it.',
  ],
  ['The board is at 0.83 m.', 'The board is at 0.83 m.', ''],
  ['Trays at approx. 0.30 m are not looked at.', 'Trays at approx. 0.30 m are not looked at.', ''],
])('tells the first sentence of "%s" from the rest', (message, lead, rest) => {
  expect(leadSentence(message)).toEqual([lead, rest]);
  expect([lead, rest].filter(Boolean).join(' ')).toBe(message);
});
