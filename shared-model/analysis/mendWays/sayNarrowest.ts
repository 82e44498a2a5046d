import { sayPlace } from '../../measures/wayWords.ts';
import type { Scene } from '../../scene/types.ts';
import type { Held } from './mendWays.ts';

/** "between shelf 4 and table 2" */
export function sayNarrowest(scene: Scene, { label, between: [one, other] }: Held): string {
  return one === undefined || other === undefined ? `on the way to ${label}` : sayPlace(scene, one, other);
}
