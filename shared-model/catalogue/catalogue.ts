import type { Material } from '../schema/types.ts';
import { pairs, rows } from './generated/rows.ts';
import type { CataloguePair, CatalogueRow } from './row.ts';

/** Where an exercise was read, and what the reader of the source noted. */
export interface CatalogueNote {
  readonly source: string;
  readonly note: string;
}

/**
 * The learning materials of the trade, in the format's shape: mm, kg, months. Footprints, masses and last ages are
 * mostly estimates: `sure` says it for each value. What is carried, and with how many hands, no source tells.
 */
export const catalogueMaterials: readonly Material[] = /* @__PURE__ */ rows.map(toMaterial);

/** Materials by catalogue id. */
export const catalogueById: ReadonlyMap<string, Material> = /* @__PURE__ */ new Map(catalogueMaterials.map((m) => [m.id, m]));

/** Orders that a text states beside steps and prerequisites. */
export const cataloguePairs: readonly CataloguePair[] = pairs;

/** Source and note of a catalogue material; null for an unknown id. */
export function catalogueNote(id: string): CatalogueNote | null {
  const row = rows.find((candidate) => candidate.id === id);
  return row ? { source: row.source, note: row.note ?? '' } : null;
}

/**
 * A material for the class's own list, made from the catalogue. Its prerequisites stay catalogue ids.
 * @throws Error when the catalogue has no such material.
 */
export function fromCatalogue(id: string, newId: string): Material {
  const found = catalogueById.get(id);
  if (!found) throw new Error(`the catalogue has no material "${id}"`);
  return { ...found, id: newId };
}

function toMaterial({ source: _source, note: _note, ...row }: CatalogueRow): Material {
  return {
    step: null,
    after: [],
    afterSure: {},
    isolates: [],
    mode: null,
    control: '',
    words: [],
    pieces: null,
    smallest: null,
    width: null,
    depth: null,
    height: null,
    mass: null,
    grip: null,
    hands: null,
    carried: null,
    heaviest: null,
    stands: 'own',
    work: null,
    mat: null,
    fromMonths: null,
    toMonths: null,
    smallParts: null,
    sure: {},
    ...row,
    catalogue: row.id,
    state: 'out',
  };
}
