import { accessRows } from './sources/accessRows.ts';
import { egressRows } from './sources/egressRows.ts';
import { fixtureRows } from './sources/fixtureRows.ts';
import { furnitureRows } from './sources/furnitureRows.ts';
import { generalRows } from './sources/generalRows.ts';
import type { Source } from './sources/source.ts';
import { spaceRows } from './sources/spaceRows.ts';

/** Every source that a rule may cite, by its key ("A01", "class rule", "M1912"). */
export const sources: Readonly<Record<string, Source>> = {
  ...accessRows,
  ...egressRows,
  ...spaceRows,
  ...furnitureRows,
  ...fixtureRows,
  ...generalRows,
};

const sureness: Readonly<Record<Source['status'], string>> = {
  found: '',
  'part-found': 'partly from memory',
  memory: 'from memory',
  own: '',
};

/** The name of the text alone, as printed; an unknown key as it is. */
export const sourceName = (key: string): string => (Object.hasOwn(sources, key) ? sources[key]?.document : undefined) ?? key;

/**
 * A source in words: "ADA Standards for Accessible Design, 403.5.1, 2010, USA (federal)"; what was not
 * read in a stored page says so. An unknown key comes back as it is, so that nothing is hidden.
 */
export function sourceText(key: string): string {
  const source = Object.hasOwn(sources, key) ? sources[key] : undefined;
  if (!source) return key;
  const { document, clause, edition, jurisdiction, status, secondHand } = source;
  const parts = [document, clause, edition, jurisdiction, secondHand ? 'read second-hand' : '', sureness[status]];
  return parts.filter((part) => part !== '').join(', ');
}
