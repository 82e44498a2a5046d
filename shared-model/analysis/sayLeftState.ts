import type { LeftState } from './leftStates.ts';

/** What is said of an entry that the checks do not find in this arrangement; null: they do. */
export function sayLeftState({ does }: Pick<LeftState, 'does'>): string | null {
  if (does === 'here') return null;
  return does === 'elsewhere'
    ? 'The checks do not find it in this arrangement, but in another.'
    : 'This no longer does anything: take it away.';
}
