import { catalogueById, fromCatalogue } from '#model/catalogue/catalogue.ts';
import type { Material } from '#model/schema/types.ts';

/**
 * Catalogue materials ready to add to a class: each with an id that is free there, its own id of the catalogue where
 * nothing else bears it. Those the class has already and unknown ids are left out.
 */
export function fromCatalogueHere(materials: readonly Material[], wanted: readonly string[]): Material[] {
  const taken = new Set(materials.map((each) => each.id));
  const here = new Set(materials.flatMap((each) => each.catalogue ?? []));
  const made: Material[] = [];
  for (const id of wanted) {
    if (here.has(id) || !catalogueById.has(id)) continue;
    let free = id;
    for (let n = 2; taken.has(free); n++) free = `${id.slice(0, 58)}-${n}`;
    taken.add(free);
    here.add(id);
    made.push(fromCatalogue(id, free));
  }
  return made;
}
