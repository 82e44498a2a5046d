import type { Outcome } from '#model/findings/finding.ts';
import { outcomeWords } from '../text/outcomeWords.ts';

const order: readonly Outcome[] = ['problem', 'cannot-tell', 'fine', 'does-not-apply'];

/** "7 checks: 1 problem, 5 fine, 1 does not apply" */
export function sayOutcomes(answers: Readonly<Record<string, Outcome>>): string {
  const all = Object.values(answers);
  const parts = order.flatMap((outcome) => {
    const count = all.filter((answer) => answer === outcome).length;
    return count === 0 ? [] : [`${count} ${count > 1 ? many[outcome] : outcomeWords[outcome]}`];
  });
  return `${all.length === 1 ? '1 check' : `${all.length} checks`}: ${parts.join(', ')}`;
}

const many: Readonly<Record<Outcome, string>> = {
  ...outcomeWords,
  problem: 'problems',
  'does-not-apply': 'do not apply',
};
