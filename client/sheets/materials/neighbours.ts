import type { Material } from '#model/schema/types.ts';

export interface Neighbours {
  /** What a child has done before: prerequisites and the step before, as they are known in this class. */
  readonly after: readonly { readonly id: string; readonly name: string; readonly sure: string | null }[];
  readonly before: readonly { readonly id: string; readonly name: string; readonly sure: string | null }[];
  /** Prerequisites that the class does not have. */
  readonly missing: readonly string[];
}

/**
 * What a material comes after and before: its own prerequisites (ids of the class or of the catalogue) and the materials
 * that name it; where it has none, its neighbours by step within the strand.
 */
export function neighboursOf(materials: readonly Material[], material: Material): Neighbours {
  const byId = new Map(materials.map((each) => [each.id, each]));
  const byCatalogue = new Map(materials.flatMap((each) => (each.catalogue === null ? [] : [[each.catalogue, each] as const])));
  const find = (id: string): Material | undefined => byId.get(id) ?? byCatalogue.get(id);
  const asked = material.after.map((id) => ({ id, found: find(id), sure: material.afterSure[id] ?? 'own' }));
  const before = materials.flatMap((each) => {
    const named = each.id === material.id ? undefined : each.after.find((id) => find(id)?.id === material.id);
    return named === undefined ? [] : [{ each, sure: each.afterSure[named] ?? 'own' }];
  });
  const strand = materials.filter((each) => each.strand === material.strand && each.strand !== '' && typeof each.step === 'number');
  const step = typeof material.step === 'number' ? material.step : null;
  const nearest = (list: readonly Material[], sign: 1 | -1): Material[] => {
    if (step === null) return [];
    const ahead = list.filter((each) => sign * ((each.step ?? 0) - step) > 0);
    const best = Math.min(...ahead.map((each) => sign * (each.step ?? 0)));
    return ahead.filter((each) => sign * (each.step ?? 0) === best);
  };
  const link = (each: Material, sure: string | null) => ({ id: each.id, name: withStep(each), sure });
  const known = asked.flatMap(({ found, sure }) => (found ? [link(found, sure)] : []));
  return {
    after: known.length > 0 ? known : nearest(strand, -1).map((each) => link(each, null)),
    before: before.length > 0 ? before.map(({ each, sure }) => link(each, sure)) : nearest(strand, 1).map((each) => link(each, null)),
    missing: asked.filter(({ found }) => !found).map(({ id }) => id),
  };
}

const withStep = (material: Material): string => (typeof material.step === 'number' ? `${material.step} ${material.name}` : material.name);
