import type { Material } from '../schema/types.ts';

/** mm: what is worked at while standing and is this high has feet of its own (common practice, no source). */
const FLOOR_STAND = 500;

/** Whether a material is a stand or another thing that belongs on the floor: no board is offered to it. */
export const standsOnFloor = ({ work, height, carried }: Pick<Material, 'work' | 'height' | 'carried'>): boolean =>
  work === 'standing' && carried !== 'whole' && (height ?? 0) >= FLOOR_STAND;
