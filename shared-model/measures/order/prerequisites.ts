import { catalogueById } from '../../catalogue/catalogue.ts';
import type { Scene } from '../../scene/types.ts';
import type { Material, Sureness } from '../../schema/types.ts';
import { readingOrder } from './reading.ts';

/** How it stands with what something on a shelf comes after. */
export type Having =
  /** it stands somewhere in this arrangement */
  | 'placed'
  /** it is out, but has no place in this arrangement */
  | 'unplaced'
  | 'store'
  | 'mend'
  | 'make'
  | 'wanted'
  /** the class does not have it, the catalogue knows it */
  | 'absent'
  /** neither the class nor the catalogue knows it */
  | 'unknown';

/** One thing that materials on the children's shelves come directly after. */
export interface Prerequisite {
  /** as the prerequisite names it: a material's id or a catalogue id */
  readonly id: string;
  /** the class's own material; null: it has none */
  readonly material: Material | null;
  readonly name: string;
  readonly having: Having;
  /** What on the shelves comes after it, in reading order. */
  readonly later: readonly Material[];
  /** The surest word that says so, and of which of them. */
  readonly sure: Sureness;
  readonly surely: readonly Material[];
}

const surest: readonly Sureness[] = ['published', 'own', 'common practice'];

const isSurer = (p: Sureness | undefined, q: Sureness): boolean => p !== undefined && surest.indexOf(p) <= surest.indexOf(q);

/**
 * Everything that materials on the children's shelves come directly after, in the order in which it is first asked for.
 * Exercises without a tray (`stands` none) are left out: there is nothing to put on a shelf.
 */
export function prerequisitesOf(scene: Scene): Prerequisite[] {
  const copies = new Map<string, Material[]>();
  for (const material of scene.classroom.materials) {
    if (material.catalogue === null) continue;
    copies.set(material.catalogue, [...(copies.get(material.catalogue) ?? []), material]);
  }
  const asked = new Map<string, { id: string; found: Material[]; later: Map<Material, Sureness> }>();
  for (const { material } of readingOrder(scene)) {
    for (const id of material.after) {
      const own = scene.materialById.get(id);
      const found = own ? [own] : (copies.get(id) ?? []);
      const key = found[0]?.id ?? id;
      const sure = material.afterSure[id] ?? 'own';
      const known = asked.get(key);
      if (!known) asked.set(key, { id, found, later: new Map([[material, sure]]) });
      else if (!isSurer(known.later.get(material), sure)) known.later.set(material, sure);
    }
  }
  return [...asked.values()].flatMap(({ id, found, later }): Prerequisite[] => {
    // Of several copies the one that is nearest to a child's hand counts.
    const best = found.map((material) => ({ material, having: havingOf(scene, material) })).sort(nearest)[0];
    const entry = best?.material ?? catalogueById.get(id);
    if (entry?.stands === 'none') return [];
    const having = best?.having ?? (entry ? 'absent' : 'unknown');
    const sure = surest.find((one) => [...later.values()].includes(one)) ?? 'common practice';
    const surely = [...later].flatMap(([one, word]) => (word === sure ? [one] : []));
    return [{ id, material: best?.material ?? null, name: entry?.name ?? id, having, later: [...later.keys()], sure, surely }];
  });
}

const byNearness: readonly Having[] = ['placed', 'unplaced', 'store', 'mend', 'make', 'wanted', 'absent', 'unknown'];
const nearest = (p: { having: Having }, q: { having: Having }): number => byNearness.indexOf(p.having) - byNearness.indexOf(q.having);

function havingOf(scene: Scene, { id, state, stands }: Material): Having {
  if (state === 'mend' || state === 'make' || state === 'wanted') return state;
  const carrier = typeof stands === 'object' ? stands.with : id;
  if (scene.stands.has(id) || scene.stands.has(carrier)) return 'placed';
  return state === 'store' ? 'store' : 'unplaced';
}
