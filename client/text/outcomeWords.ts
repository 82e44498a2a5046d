import type { Outcome } from '#model/findings/finding.ts';

/** The four outcomes of a check, as everybody reads them on the sheet. */
export const outcomeWords: Readonly<Record<Outcome, string>> = {
  problem: 'problem',
  fine: 'fine',
  'cannot-tell': 'cannot tell',
  'does-not-apply': 'does not apply',
};
