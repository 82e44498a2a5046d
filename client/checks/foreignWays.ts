import { ruleSetOf } from '#model/standards/ruleSets.ts';
import { sources } from '#model/standards/sources.ts';

/** Access and the ways through a room: rows A01 … and B01 …, read in texts of the USA but for England's on ways out. */
const isOfWays = (key: string): boolean => /^[AB]\d/.test(key);
/** Codes begin with us- where the rule set is of the USA; the class's own rule is of no country. */
const isOfUsa = (id: string): boolean => id.startsWith('us-');

/**
 * Said once where a class goes by the rules of another country and its widths are taken from texts of the USA, because
 * no such figure for furniture was found there; null: nothing to say.
 */
export function sayForeignWays(ruleSet: string, letters: ReadonlyMap<string, string>): string | null {
  if (ruleSet === 'own' || isOfUsa(ruleSet)) return null;
  const country = ruleSetOf(ruleSet)?.name.replace(/,.*$/, '');
  const foreign = [...letters].filter(([key]) => isOfWays(key) && sources[key]?.jurisdiction.startsWith('USA'));
  if (!country || foreign.length === 0) return null;
  const named = foreign.map(([, letter]) => letter).join(', ');
  return `No figure of ${country} for ways between furniture is known here: ${named} ${foreign.length === 1 ? 'is' : 'are'} taken from the USA.`;
}
