import type { Classroom } from '../schema/types.ts';
import { fixtureBody, pieceBody } from './bodies.ts';
import { buildRoom } from './room.ts';
import { buildShelves } from './shelves.ts';
import type { Scene, SceneBody } from './types.ts';
import { inWalkOrder } from './walk.ts';

/** The arrangement that counts: the one asked for, else the current one, else the first. */
export function pickArrangement(classroom: Classroom, id?: string | null) {
  const byId = (wanted: string | null | undefined) => classroom.arrangements.find((a) => a.id === wanted);
  return byId(id) ?? byId(classroom.current) ?? classroom.arrangements[0];
}

/**
 * One arrangement as the analyser sees it.
 * @throws Error when the classroom has no arrangement (the schema refuses such a file).
 */
export function buildScene(classroom: Classroom, arrangementId?: string | null): Scene {
  const arrangement = pickArrangement(classroom, arrangementId);
  if (!arrangement) throw new Error('a classroom has at least one arrangement');
  const room = buildRoom(classroom.room);
  const bodies: SceneBody[] = [...arrangement.pieces.map(pieceBody), ...classroom.room.fixtures.map(fixtureBody)];
  const bodyById = new Map(bodies.map((body) => [body.id, body]));
  const materialById = new Map(classroom.materials.map((material) => [material.id, material]));
  const { sides, stands } = buildShelves(arrangement, bodyById, materialById);
  return { classroom, arrangement, room, bodies, bodyById, sides: inWalkOrder(sides, arrangement, room), stands, materialById };
}
