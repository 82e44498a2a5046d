import type { Session } from '#client/session/types.ts';
import type { Fixture, Piece } from '#model/schema/types.ts';
import type { Item } from './items.ts';

export type Thing = Piece | Fixture;

/** The piece or fixture an item names. */
export function thingOf(session: Session, item: Item): Thing | undefined {
  if (item.kind === 'piece') return session.arrangement().pieces.find((p) => p.id === item.id);
  return item.kind === 'fixture' ? session.classroom().room.fixtures.find((f) => f.id === item.id) : undefined;
}

export const isLocked = (thing: Thing): boolean => 'locked' in thing && thing.locked === true;
