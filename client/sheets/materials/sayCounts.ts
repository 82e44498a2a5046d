import type { Scene } from '#model/scene/types.ts';
import type { Material } from '#model/schema/types.ts';
import { type Whereabouts, whereaboutsOf } from './whereabouts.ts';

/** "111 placed, 10 on the table, 3 stand on the floor, 13 need no shelf, 2 not out": every material is in one of them. */
export function sayCounts(scene: Scene, materials: readonly Material[] = scene.classroom.materials): string {
  const where = whereaboutsOf(scene);
  const count = (...places: Whereabouts['at'][]): number =>
    materials.filter(({ id }) => places.includes(where.get(id)?.at ?? 'none')).length;
  const floor = count('floor');
  const free = count('none');
  const away = count('away');
  return [
    `${count('board', 'room')} placed`,
    `${count('table')} on the table`,
    ...(floor > 0 ? [`${floor} ${floor === 1 ? 'stands' : 'stand'} on the floor`] : []),
    ...(free > 0 ? [`${free} ${free === 1 ? 'needs' : 'need'} no shelf`] : []),
    ...(away > 0 ? [`${away} not out`] : []),
  ].join(', ');
}
