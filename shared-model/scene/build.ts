import type { Classroom } from '../schema/types.ts';
import { fixtureBody, pieceBody } from './bodies.ts';
import { sameList, sameMap } from './kept.ts';
import { buildRoom } from './room.ts';
import { buildShelves } from './shelves.ts';
import type { Scene } from './types.ts';
import { inWalkOrder } from './walk.ts';

/** The arrangement that counts: the one asked for, else the current one, else the first. */
export function pickArrangement(classroom: Classroom, id?: string | null) {
  const byId = (wanted: string | null | undefined) => classroom.arrangements.find((a) => a.id === wanted);
  return byId(id) ?? byId(classroom.current) ?? classroom.arrangements[0];
}

/**
 * One arrangement as the analyser sees it.
 * @param before an earlier scene: what did not change since is handed on as the very same object
 * @throws Error when the classroom has no arrangement (the schema refuses such a file).
 */
export function buildScene(classroom: Classroom, arrangementId?: string | null, before?: Scene): Scene {
  const arrangement = pickArrangement(classroom, arrangementId);
  if (!arrangement) throw new Error('a classroom has at least one arrangement');
  const { corners, openings, fixtures } = classroom.room;
  const old = before?.classroom.room;
  const room = before && old?.corners === corners && old.openings === openings ? before.room : buildRoom(classroom.room);
  const bodies = sameList(before?.bodies, [...arrangement.pieces.map(pieceBody), ...fixtures.map(fixtureBody)]);
  const bodyById = before?.bodies === bodies ? before.bodyById : new Map(bodies.map((body) => [body.id, body]));
  const { materials } = classroom;
  const materialById =
    before?.classroom.materials === materials ? before.materialById : new Map(materials.map((material) => [material.id, material]));
  const shelves = buildShelves(arrangement, bodyById, materialById);
  const sides = sameList(before?.sides, inWalkOrder(shelves.sides, arrangement, room));
  const openSides = sameList(
    before?.openSides,
    sides.map((side) => side.open),
  );
  return {
    classroom,
    arrangement,
    room,
    bodies,
    bodyById,
    sides,
    openSides,
    stands: sameMap(before?.stands, shelves.stands),
    materialById,
  };
}
