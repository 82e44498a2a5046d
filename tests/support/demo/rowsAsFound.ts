import type { Row } from './fill.ts';
import { rows } from './rows.ts';

/** Pairs of materials that have changed places since the shelves were last set. */
const swapped: readonly (readonly [string, string])[] = [
  ['ma-sand-numerals', 'ma-counters'],
  ['se-cyl-all', 'se-cyl-height'],
  ['se-touch-board', 'se-sand-grade'],
];
/** Things that were never given a place. */
const unplaced = new Set(['la-books', 'ma-thousand-chain', 'pl-wash-dishes', 'cu-music-board']);

/** The shelf sides as the team found them. */
export const rowsAsFound: readonly Row[] = rows.map((row) => ({
  ...row,
  ids: row.ids.filter((id) => !unplaced.has(id)).map(swap),
}));

function swap(id: string): string {
  const pair = swapped.find((both) => both.includes(id));
  if (!pair) return id;
  return pair[0] === id ? pair[1] : pair[0];
}
