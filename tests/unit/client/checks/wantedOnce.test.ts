import { expect, it } from 'vitest';
import { wantedOnce } from '#client/checks/wantedOnce.ts';
import { finding } from './finding.ts';

it('asks once for what several checks of one question want', () => {
  const rules = ['exit/blocked', 'exit/doors', 'exit/far', 'exit/swing'];
  const same = rules.map((rule) => finding({ key: rule, rule, outcome: 'cannot-tell', missing: ['whose rules count for the ways out'] }));
  const other = finding({
    key: 'p',
    rule: 'places/fixtures',
    outcome: 'cannot-tell',
    missing: [],
    message: 'How many toilets is not known.',
  });
  expect(wantedOnce([...same, other]).map(({ wanted, others, finding: { rule } }) => [wanted, others, rule])).toEqual([
    ['whose rules count for the ways out', 3, 'exit/blocked'],
    ['How many toilets is not known.', 0, 'places/fixtures'],
  ]);
  // The same words for another question stay there.
  expect(wantedOnce([same[0] ?? other, finding({ ...same[0], rule: 'places/area' })]).length).toBe(2);
});
