import type { TornEntry } from '#model/document/tornEntries.ts';
import { sayThings } from '#model/findings/sayBoard.ts';
import { kindWords } from '../plan/describe.ts';

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
  const named = Object.entries(kindWords.get(list) ?? {}).find(([known]) => known === entry.kind);
  const kind = named?.[1].toLowerCase() ?? words[list] ?? 'thing';
  const name = typeof entry.name === 'string' ? entry.name : list === 'placements' ? String(entry.material ?? '') : '';
  return name === '' ? `the ${kind} without a name` : `the ${kind} “${name}”`;
}
