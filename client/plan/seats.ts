import { add, sub, turn } from '#model/geometry/vec.ts';
import type { Piece } from '#model/schema/types.ts';
import { tidyDegrees } from './box.ts';

type Place = { x: number; y: number; rotation: number };

/** Where a thing that belongs to another (a seat at its table) goes when the other moves. */
export function carried(follower: Place, from: Place, to: Place): Place {
  const turned = to.rotation - from.rotation;
  return { ...add(to, turn(sub(follower, from), turned)), rotation: tidyDegrees(follower.rotation + turned) };
}

export const seatsOf = (pieces: readonly Piece[], table: string): Piece[] => pieces.filter((p) => p.kind === 'seat' && p.table === table);
