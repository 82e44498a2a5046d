import { fixtureBody, pieceBody } from '#model/scene/bodies.ts';
import { buildRoom } from '#model/scene/room.ts';
import type { SceneBody, SceneRoom } from '#model/scene/types.ts';
import type { Fixture, Piece, Room } from '#model/schema/types.ts';

// Entries that did not change keep their identity, so their shapes can be kept with them.
const pieces = new WeakMap<Piece, SceneBody>();
const fixtures = new WeakMap<Fixture, SceneBody>();
const rooms = new WeakMap<Room, SceneRoom>();

function remembered<K extends object, V>(kept: WeakMap<K, V>, key: K, make: (key: K) => V): V {
  const known = kept.get(key);
  if (known) return known;
  const made = make(key);
  kept.set(key, made);
  return made;
}

export const bodyOfPiece = (piece: Piece): SceneBody => remembered(pieces, piece, pieceBody);
export const bodyOfFixture = (fixture: Fixture): SceneBody => remembered(fixtures, fixture, fixtureBody);
export const shapeOfRoom = (room: Room): SceneRoom => remembered(rooms, room, buildRoom);
