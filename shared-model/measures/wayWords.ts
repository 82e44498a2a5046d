import type { Scene } from '../scene/types.ts';
import { mm, type Quantity } from '../units/quantity.ts';
import type { WayEnd } from './boundEnds.ts';
import { SEATED_DEPTH, type SeatStrip, stripAt } from './seats.ts';
import type { Target } from './targets.ts';

/** How people call what stands beside a way: a piece, a fixture, a door or the wall. */
export function sayObstacle(scene: Scene, id: string): string {
  if (id.startsWith('wall:')) return 'the wall';
  return scene.bodyById.get(id)?.label ?? sayOpening(scene, id);
}

export function sayOpening(scene: Scene, id: string): string {
  return scene.room.openings.find((o) => o.id === id)?.label ?? id;
}

/** "Sensorial A", or "Sensorial A (back)" for another side than the front. */
export function sayTarget(target: Target): string {
  const isPlain = target.side === null || target.side === 'front';
  return isPlain ? target.label : `${target.label} (${target.side})`;
}

/** "between shelf 7 and the wall", or "beside table 3" where both sides are one thing. */
export function sayPlace(scene: Scene, one: string, other: string): string {
  const words = [sayObstacle(scene, one), sayObstacle(scene, other)];
  if (one === other) return words[0] === 'the wall' ? 'between the walls' : `beside ${words[0]}`;
  if (words[0] === words[1]) return 'between the walls';
  return words[0] === 'the wall' ? `between ${words[1]} and the wall` : `between ${words[0]} and ${words[1]}`;
}

/** What "{chairs}{kept}{behind}" at the end of a message is filled with. */
interface ChairWords {
  readonly chairs: string;
  readonly kept: Quantity | '';
  readonly behind: string;
}

const noChairs: ChairWords = { chairs: '', kept: '', behind: '' };

/**
 * Why less is measured than lies open on the plan: "The chairs of table 1 are in use here: 0.483 m behind its edge are
 * kept for the children on them." Nothing where neither end is at such a strip.
 */
export function sayChairs(strips: readonly SeatStrip[], ends: readonly WayEnd[]): ChairWords {
  const tables = new Set(ends.flatMap((end) => stripAt(strips, end)?.table.label ?? []));
  if (tables.size === 0) return noChairs;
  const behind = ` behind ${tables.size > 1 ? 'their edges' : 'its edge'} are kept for the children on them.`;
  return { chairs: ` The chairs of ${[...tables].join(' and ')} are in use here: `, kept: mm(SEATED_DEPTH), behind };
}
