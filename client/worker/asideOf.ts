import type { Measures } from '#model/measures/measures.ts';
import { sayError } from './judge.ts';
import type { Aside } from './messages.ts';

/** What the Places sheet compares, reckoned here because every rule set is tried. One that breaks is told in words. */
export function asideOf(measures: Measures, troubles: Map<string, string>): Aside {
  try {
    return { places: measures.placesByRuleSet() };
  } catch (error) {
    troubles.set('places', `The comparison of rules could not be worked out (${sayError(error)}).`);
    return { places: [] };
  }
}
