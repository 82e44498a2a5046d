import { judgesPracticalLife } from '#model/measures/order/classOptions.ts';
import type { Scene } from '#model/scene/types.ts';
import type { Classroom, Material } from '#model/schema/types.ts';

/** Whether the class has the order of a material judged: practical life only where it asks for it. */
export const isStepJudged = (scene: Scene, { area }: Pick<Material, 'area'>): boolean =>
  area !== 'practical-life' || judgesPracticalLife(scene.classroom);

/** The options of a class after practical life is judged like every other area, or is not. */
export function withPracticalLife(options: Classroom['options'], rule: 'order/sequence' | 'order/strand', isOn: boolean) {
  const { practicalLife: _old, ...others } = options[rule] ?? {};
  return { ...options, [rule]: isOn ? { ...others, practicalLife: true } : others };
}

/** Whether some practical life stands on the children's shelves whose order nobody judges. */
export const leavesPracticalLife = (scene: Scene): boolean =>
  !judgesPracticalLife(scene.classroom) && scene.sides.some(({ boards }) => boards.some(({ trays }) => trays.some(isPracticalLife)));

const isPracticalLife = ({ material }: { material: Material }): boolean => material.area === 'practical-life';
