import type { Session } from '#client/session/types.ts';
import type { SceneBody } from '#model/scene/types.ts';
import type { Fixture, Piece } from '#model/schema/types.ts';
import { bodyOfFixture, bodyOfPiece } from './bodies.ts';
import type { Item } from './items.ts';

export type Thing = Piece | Fixture;

/** The piece or fixture an item names. */
export function thingOf(session: Session, item: Item): Thing | undefined {
  if (item.kind === 'piece') return session.arrangement().pieces.find((p) => p.id === item.id);
  return item.kind === 'fixture' ? session.classroom().room.fixtures.find((f) => f.id === item.id) : undefined;
}

/** The body of a piece or fixture as it stands; undefined: the item is something else, or gone. */
export function bodyOfItem(session: Session, item: Item): SceneBody | undefined {
  if (item.kind === 'piece') {
    const piece = session.arrangement().pieces.find((p) => p.id === item.id);
    return piece && bodyOfPiece(piece);
  }
  const fixture = item.kind === 'fixture' ? session.classroom().room.fixtures.find((f) => f.id === item.id) : undefined;
  return fixture && bodyOfFixture(fixture);
}

export const isLocked = (thing: Thing): boolean => 'locked' in thing && thing.locked === true;
