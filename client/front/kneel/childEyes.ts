import type { ChildModel } from '#model/measures/childModel.ts';
import type { Reach } from '#model/measures/reach.ts';
import type { Scene } from '#model/scene/types.ts';

export interface ChildEye {
  readonly id: string;
  readonly name: string;
  readonly child: ChildModel;
}

/** Whose eyes one can look with: the smallest child's, and those of the youngest of each other group. */
export function childEyes({ classroom }: Scene, reach: Reach): ChildEye[] {
  if (!reach.smallest) return [];
  const eyes: ChildEye[] = [{ id: 'smallest', name: 'The smallest child', child: reach.smallest }];
  for (const group of classroom.children.groups) {
    const child = group.count > 0 ? reach.meantFor(group) : null;
    if (!child || eyes.some((eye) => eye.child.months === child.months)) continue;
    eyes.push({ id: group.id, name: `The youngest of ${group.name || 'the next group'}`, child });
  }
  return eyes;
}
