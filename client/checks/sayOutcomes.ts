import type { Outcome } from '#model/findings/finding.ts';
import { outcomeWords } from '../text/outcomeWords.ts';

const order: readonly Outcome[] = ['problem', 'cannot-tell', 'fine', 'does-not-apply'];

/** "7 checks: 2 found something, 4 fine, 1 does not apply". One check may find several things, so they are not counted as problems. */
export function sayOutcomes(answers: Readonly<Record<string, Outcome>>): string {
  const all = Object.values(answers);
  const parts = order.flatMap((outcome) => {
    const count = all.filter((answer) => answer === outcome).length;
    return count === 0 ? [] : [`${count} ${(count > 1 ? many : one)[outcome]}`];
  });
  return `${all.length === 1 ? '1 check' : `${all.length} checks`}: ${parts.join(', ')}`;
}

const one: Readonly<Record<Outcome, string>> = { ...outcomeWords, problem: 'found something' };
const many: Readonly<Record<Outcome, string>> = {
  ...one,
  'does-not-apply': 'do not apply',
};
