import type { Measures } from '#model/measures/values.ts';
import type { Aside } from './messages.ts';
import { sayError } from './sayError.ts';

/** What the Places sheet compares, reckoned here because every rule set is tried. If that breaks, `troubles` says so in words. */
export function asideOf(measures: Measures, troubles: string[]): Aside {
  try {
    return { places: measures.placesByRuleSet() };
  } catch (error) {
    troubles.push(`The comparison of rules could not be worked out (${sayError(error)}).`);
    return { places: [] };
  }
}
