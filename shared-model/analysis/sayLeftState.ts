import type { LeftState } from './leftStates.ts';

/** What is said of an entry that the checks do not find in this arrangement, or find worse; null: as it was left. */
export function sayLeftState({ does }: Pick<LeftState, 'does'>): string | null {
  if (does === 'here') return null;
  if (does === 'worse') return 'It has become worse since it was left, so it is open again.';
  return does === 'elsewhere'
    ? 'The checks do not find it in this arrangement, but in another.'
    : 'This no longer does anything: take it away.';
}
