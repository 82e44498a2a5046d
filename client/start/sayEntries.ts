import type { TornEntry } from '#model/document/tornEntries.ts';
import { sayThings } from '#model/findings/sayBoard.ts';
import { fixtureKindName, openingKindName, pieceKindName } from '../plan/describe.ts';

const kinds: Readonly<Record<string, (kind: never) => string | undefined>> = {
  openings: openingKindName,
  pieces: pieceKindName,
  fixtures: fixtureKindName,
};
const words: Readonly<Record<string, string>> = {
  openings: 'door or window',
  pieces: 'piece of furniture',
  fixtures: 'fixture',
  materials: 'material',
  placements: 'place of a tray',
};

/** What of a file cannot be read, as people call it: "the door “hall”", "the shelf “Pouring” and the material “Rods”". */
export const sayEntries = (entries: readonly TornEntry[]): string => sayThings(entries.map(sayEntry));

function sayEntry({ list, entry }: TornEntry): string {
  const kind = kinds[list]?.(entry.kind as never)?.toLowerCase() ?? words[list] ?? 'thing';
  const name = typeof entry.name === 'string' ? entry.name : list === 'placements' ? String(entry.material ?? '') : '';
  return name === '' ? `the ${kind} without a name` : `the ${kind} “${name}”`;
}
