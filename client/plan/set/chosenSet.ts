import type { Session } from '#client/session/types.ts';
import type { Piece } from '#model/schema/types.ts';
import { lower, nameOfItem } from '../describe.ts';
import { type Item, isSame, itemOfChosen, itemsInOrder, piecesInOrder } from '../items.ts';
import { planStoreOf } from '../planStore.ts';
import { seatsOf } from '../seats.ts';
import { isLocked, type Thing, thingOf } from '../things.ts';
import { choose } from '../verbs.ts';

/** Pieces and fixtures can be chosen together; doors, walls and corners one at a time. */
export const canBeSeveral = (item: Item): boolean => item.kind === 'piece' || item.kind === 'fixture';

/** Everything that is chosen, the first first. */
export function itemsChosen(session: Session): Item[] {
  const { chosen, alsoChosen } = session.view();
  const first = itemOfChosen(chosen);
  if (!first) return [];
  const pieces = new Set(session.arrangement().pieces.map(({ id }) => id));
  return [first, ...alsoChosen.map((id): Item => ({ kind: pieces.has(id) ? 'piece' : 'fixture', id }))];
}

export const isInSet = (items: readonly Item[], item: Item): boolean => items.some((other) => isSame(other, item));

/** Chooses several things at once and says which. One alone is chosen as ever. */
export function chooseSeveral(session: Session, items: readonly Item[]): void {
  const set = withoutOwnSeats(session, items.filter(canBeSeveral));
  const [first, ...rest] = set;
  if (!first || rest.length === 0) {
    choose(session, first ?? null);
    if (!first) session.announce('Nothing is chosen.');
    return;
  }
  session.setView({ chosen: first, alsoChosen: rest.map(({ id }) => id) });
  session.announce(`${saySet(session, set)}.`);
}

/** All pieces that stand, in the order of the lists. */
export function chooseAll(session: Session): void {
  chooseSeveral(
    session,
    piecesInOrder(session.arrangement(), session.classroom()).map(({ id }): Item => ({ kind: 'piece', id })),
  );
}

/** Adds a thing to what is chosen, or takes it out. */
export function toggleChosen(session: Session, item: Item): void {
  if (!canBeSeveral(item)) {
    session.announce(`${nameOfItem(session, item)} is chosen alone: doors, windows and walls belong to the room.`);
    return;
  }
  const items = itemsChosen(session).filter(canBeSeveral);
  const isIn = isInSet(items, item);
  const next = isIn ? items.filter((other) => !isSame(other, item)) : [...items, item];
  const name = nameOfItem(session, item);
  const [first, ...rest] = next;
  session.setView({ chosen: first ?? null, alsoChosen: rest.map(({ id }) => id) });
  session.announce(
    `${name} is ${isIn ? 'left out' : 'chosen'}; ${next.length === 0 ? 'nothing is chosen' : `${next.length} chosen`}.`,
    planStoreOf(session).state().tool?.kind === 'several',
  );
}

/** From the first chosen thing to this one, in the order of the lists. */
export function chooseUpTo(session: Session, item: Item): void {
  const all = itemsInOrder(session.arrangement(), session.classroom()).filter(canBeSeveral);
  const items = itemsChosen(session);
  const from = all.findIndex((other) => items[0] && isSame(other, items[0]));
  const to = all.findIndex((other) => isSame(other, item));
  if (from < 0 || to < 0) {
    toggleChosen(session, item);
    return;
  }
  const between = all.slice(Math.min(from, to), Math.max(from, to) + 1);
  chooseSeveral(session, from <= to ? between : between.reverse());
}

/** Chairs go with their table, so they need not be chosen beside it. */
function withoutOwnSeats(session: Session, items: readonly Item[]): Item[] {
  const ids = new Set(items.map(({ id }) => id));
  return items.filter((item) => {
    const thing = thingOf(session, item);
    const table = thing && 'table' in thing && typeof thing.table === 'string' ? thing.table : null;
    return table === null || !ids.has(table);
  });
}

/** "4 things: shelf 2, shelf 3, table T1 and sink", the first ones by name; one by its name alone. */
export function saySet(session: Session, items: readonly Item[]): string {
  const [only] = items;
  if (only && items.length === 1) return nameOfItem(session, only);
  const names = items.slice(0, 4).map((item) => lower(nameOfItem(session, item)));
  const more = items.length - names.length;
  const last = more > 0 ? `${more} more` : names.pop();
  return `${items.length} things: ${names.join(', ')} and ${last}`;
}

export interface Movers {
  /** What moves by itself. */
  readonly things: readonly Thing[];
  /** Chairs that go with a table of the set, by their table. */
  readonly seats: readonly { readonly seat: Piece; readonly table: Piece }[];
  readonly locked: readonly Item[];
}

/** Who moves when a set is moved: seats go with their tables, locked things stay. */
export function moversOf(session: Session, items: readonly Item[]): Movers {
  const { pieces } = session.arrangement();
  const things: Thing[] = [];
  const locked: Item[] = [];
  for (const item of withoutOwnSeats(session, items)) {
    const thing = thingOf(session, item);
    if (!thing) continue;
    if (isLocked(thing)) locked.push(item);
    else things.push(thing);
  }
  const seats = things.flatMap((table) =>
    table.kind === 'table' ? seatsOf(pieces, table.id).map((seat) => ({ seat, table: table as Piece })) : [],
  );
  return { things, seats, locked };
}

/** " Shelf 3 is locked and stays." or nothing. */
export function sayLockedOnes(session: Session, locked: readonly Item[]): string {
  if (locked.length === 0) return '';
  const names = locked.map((item) => nameOfItem(session, item));
  if (names.length > 3) return ` ${names.length} are locked and stay.`;
  const said = names.map((name, i) => (i === 0 ? name : lower(name))).join(' and ');
  return ` ${said} ${names.length === 1 ? 'is locked and stays' : 'are locked and stay'}.`;
}

/** True when every piece of them is locked. */
export function areLocked(session: Session, items: readonly Item[]): boolean {
  const pieces = items.flatMap((item) => (item.kind === 'piece' ? (thingOf(session, item) ?? []) : []));
  return pieces.length > 0 && pieces.every(isLocked);
}
