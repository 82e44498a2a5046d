import { expect, it } from 'vitest';
import { reduceWaits, waitingFor } from '#model/analysis/moveDay/waits.ts';

const steps = [
  { id: 'a', waits: [] },
  { id: 'b', waits: ['a'] },
  { id: 'c', waits: ['a', 'b'] },
  { id: 'd', waits: [] },
  { id: 'e', waits: ['d', 'c', 'a'] },
];

it('what is waited for already is left out', () => {
  expect([...reduceWaits(steps)]).toEqual([
    ['a', []],
    ['b', ['a']],
    ['c', ['b']],
    ['d', []],
    ['e', ['c', 'd']],
  ]);
});

it('all that cannot be done without a step, also further on', () => {
  expect(waitingFor(steps, 'b')).toEqual(['c', 'e']);
  expect(waitingFor(steps, 'd')).toEqual(['e']);
  expect(waitingFor(steps, 'e')).toEqual([]);
});
