import type { Material } from '../schema/types.ts';
import type { Between } from './traySpot.ts';

/**
 * kg carried at once. As entered; else the whole where all is carried together; nothing where it stays. Not known: no
 * more than the whole. Null: not even that is known.
 */
export function carriedAtOnce({ carried, heaviest, mass }: Pick<Material, 'carried' | 'heaviest' | 'mass'>): Between | null {
  if (carried === 'stays') return { low: 0, high: 0 };
  const known = heaviest ?? (carried === 'whole' ? mass : null);
  if (known !== null) return { low: known, high: known };
  return mass === null ? null : { low: 0, high: mass };
}
