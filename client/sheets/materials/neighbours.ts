import { isToldBy } from '#model/measures/order/relation.ts';
import { stepOf } from '#model/measures/steps.ts';
import type { Scene } from '#model/scene/types.ts';
import type { Material } from '#model/schema/types.ts';
import { orderIn } from '../../front/fitOptions.ts';

export interface Neighbour {
  readonly id: string;
  readonly name: string;
  /** How sure it is that one comes after the other: published, common practice, own; null: by their steps only. */
  readonly sure: string | null;
}

/** What a material comes after and before, with how sure that is, and the names of what the class does not have. */
export function neighboursOf(scene: Scene, material: Material): { after: Neighbour[]; before: Neighbour[]; missing: readonly string[] } {
  const step = stepOf(scene, material.id);
  return {
    after: (step?.comesAfter ?? []).map((first) => neighbour(first, sureOf(scene, material, first))),
    before: (step?.comesBefore ?? []).map((later) => neighbour(later, sureOf(scene, later, material))),
    missing: step?.missing ?? [],
  };
}

/** As the order check says it: by the handbooks where a chain of published steps and prerequisites tells it, and so on. */
function sureOf(scene: Scene, later: Material, first: Material): string | null {
  const { relation } = orderIn(scene);
  const isTold = (grade: 3 | 2): boolean => isToldBy(relation, scene.classroom.materials, first.id, later.id, grade);
  if (isTold(3)) return 'published';
  if (isTold(2)) return 'own';
  const named = later.after.find((id) => id === first.id || id === first.catalogue);
  return named === undefined ? null : (later.afterSure[named] ?? 'own');
}

function neighbour(material: Material, sure: string | null): Neighbour {
  const name = typeof material.step === 'number' ? `${material.step} ${material.name}` : material.name;
  return { id: material.id, name, sure };
}
