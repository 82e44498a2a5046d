import type { Material } from '../../schema/types.ts';
import { massOf } from '../childMass.ts';
import type { Reach } from '../reach.ts';

/** The share of body mass above which carrying is worth a note (reach/carry; backpack advice, a proxy). */
export const CARRY_NOTE = 0.1;

/** kg that the youngest child meant to use a material carries without a note; null: the children's ages are not known. */
export function carryNoteKg(reach: Pick<Reach, 'meantFor'>, material: Material): number | null {
  const child = reach.meantFor(material);
  return child === null ? null : massOf(child) * CARRY_NOTE;
}
