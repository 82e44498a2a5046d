import type { Scene } from '../scene/types.ts';
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
