import type { Session } from '#client/session/types.ts';
import type { Point } from '#model/geometry/vec.ts';
import type { Item } from '../items.ts';
import { withSetVerbs } from '../lateParts.ts';
import { putAway, slideBy, toggleLock, turnBy } from '../verbs.ts';
import { canBeSeveral } from './chosenSet.ts';

// The same verbs for one thing and for several: keys, strips and lists all come here.

type Verbs = typeof import('./setVerbs.ts');
type VerbName = 'copySet' | 'mirrorSet' | 'rowSet' | 'spaceSet' | 'lockSet' | 'putAwaySet';

/** What a verb does to what is chosen comes when it is first wanted, and says itself what it did. */
const later = (session: Session, run: (verbs: Verbs) => void): true => {
  withSetVerbs(session, run);
  return true;
};
const verb =
  (name: VerbName) =>
  (session: Session, items: readonly Item[]): boolean =>
    later(session, (verbs) => verbs[name](session, items));

export const slideChosen = (session: Session, items: readonly Item[], by: Point): boolean =>
  items.length > 1
    ? later(session, (verbs) => verbs.slideSet(session, items, by))
    : items[0] !== undefined && slideBy(session, items[0], by);

export const turnChosen = (session: Session, items: readonly Item[], degrees: number): boolean =>
  items.length > 1
    ? later(session, (verbs) => verbs.turnSet(session, items, degrees))
    : items[0] !== undefined && turnBy(session, items[0], degrees);

export const putAwayChosen = (session: Session, items: readonly Item[]): boolean =>
  items.length > 1 ? verb('putAwaySet')(session, items) : items[0] !== undefined && putAway(session, items[0]);

/** `gap`: mm from each to the next; 0: touching. */
export const rowChosen = (session: Session, items: readonly Item[], gap: number): boolean =>
  later(session, (verbs) => verbs.rowSet(session, items, gap));

export const copyChosen = verb('copySet');
export const mirrorChosen = verb('mirrorSet');

function lockChosen(session: Session, items: readonly Item[]): boolean {
  const [first] = items;
  const piece = items.length === 1 && first?.kind === 'piece' ? session.arrangement().pieces.find(({ id }) => id === first.id) : undefined;
  return piece ? toggleLock(session, piece) : verb('lockSet')(session, items);
}

export interface SetVerb {
  readonly id: 'again' | 'mirror' | 'row' | 'evenly' | 'lock';
  readonly name: string;
  /** The key that does it, printed after its name. */
  readonly letter: string;
  /** Things it takes at least. */
  readonly least: number;
  readonly run: (session: Session, items: readonly Item[]) => boolean;
}

export const setVerbs: readonly SetVerb[] = [
  { id: 'again', name: 'Others like them', letter: 'G', least: 1, run: copyChosen },
  { id: 'mirror', name: 'Mirror', letter: 'M', least: 1, run: mirrorChosen },
  { id: 'row', name: 'In a row', letter: 'O', least: 2, run: verb('rowSet') },
  { id: 'evenly', name: 'Evenly', letter: 'Y', least: 3, run: verb('spaceSet') },
  { id: 'lock', name: 'Lock', letter: 'L', least: 1, run: lockChosen },
];

/** The verb of a letter key; null: none, or nothing is chosen that it could take. */
export function verbOfKey(key: string, items: readonly Item[]): SetVerb | null {
  const letter = key.toUpperCase();
  const things = items.filter(canBeSeveral);
  return setVerbs.find((one) => one.letter === letter && things.length >= 1 && things.length === items.length) ?? null;
}
