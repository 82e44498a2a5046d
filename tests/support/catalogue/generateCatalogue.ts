import type { CatalogueRow } from '#model/catalogue/row.ts';
import { type MaterialsSource, readMaterialsSource, type SourceMaterial } from './source.ts';
import { furtherPairs, type GeneratedStep, generateSteps } from './steps.ts';

export const cataloguePath = 'shared-model/catalogue/generated/rows.ts';

/** The catalogue as a module: one material a line, only what differs from an empty material. */
export function catalogueModule(source: MaterialsSource = readMaterialsSource()): string {
  const steps = generateSteps(source);
  const lines = source.materials.map((m) => `  ${JSON.stringify(toRow(m, steps.get(m.id)))},`);
  return [
    '// Generated from tests/reference/data/materials.json by `npm run generate`.',
    "import type { CataloguePair, CatalogueRow } from '../row.ts';",
    '',
    'export const rows: readonly CatalogueRow[] = [',
    ...lines,
    '];',
    '',
    '/** before, after, how sure: stated pairs that neither steps nor prerequisites say. */',
    'export const pairs: readonly CataloguePair[] = [',
    ...furtherPairs(source).map((pair) => `  ${JSON.stringify(pair)},`),
    '];',
    '',
  ].join('\n');
}

function toRow(m: SourceMaterial, step: GeneratedStep | undefined): CatalogueRow {
  if (!step) throw new Error(`${m.id} has no step`);
  const dims = m.dims_mm;
  const row = {
    id: m.id,
    name: m.name,
    area: m.area,
    strand: m.strand,
    step: step.step,
    after: m.prerequisites,
    afterSure: Object.fromEntries(Object.entries(m.prerequisite_confidence).map(([id, sure]) => [id, prerequisiteSure(sure)])),
    isolates: m.isolates === 'none' ? [] : [m.isolates],
    mode: m.mode,
    control: m.control_of_error,
    pieces: m.pieces,
    smallest: m.smallest_mm,
    width: dims?.w,
    depth: dims?.d,
    height: dims?.h,
    mass: m.mass_kg,
    stands: dims ? undefined : 'none',
    work: m.work_place,
    mat: m.mat_mm ? { width: m.mat_mm.w, depth: m.mat_mm.d } : undefined,
    fromMonths: m.age_from_months,
    toMonths: m.age_to_months,
    smallParts: m.choking_under3,
    sure: { step: step.sure, ...fieldSure(m) },
    note: m.note,
    source: m.source,
  };
  const said = Object.entries(row).filter(([, value]) => value !== undefined && value !== null && value !== '');
  return Object.fromEntries(said.filter(([, value]) => !Array.isArray(value) || value.length > 0)) as unknown as CatalogueRow;
}

/** A prerequisite that only the grades imply is published all the same. */
const prerequisiteSure = (sure: string): string => (sure === 'published grade order' ? 'published' : sure);

/** Which of our fields each field of the source stands for. */
const fields: Readonly<Record<string, readonly string[]>> = {
  pieces: ['pieces'],
  dims_mm: ['width', 'depth', 'height'],
  mass_kg: ['mass'],
  smallest_mm: ['smallest'],
  work_place: ['work'],
  mat_mm: ['mat'],
  age: ['fromMonths'],
};

function fieldSure(m: SourceMaterial): Record<string, string> {
  const sure: Record<string, string> = {};
  for (const [from, to] of Object.entries(fields)) {
    const said = m.field_confidence[from];
    if (said !== undefined && said !== 'not applicable') for (const field of to) sure[field] = said;
  }
  // The source says so once for all of them: a last age is never published.
  sure.toMonths = 'estimate';
  return sure;
}
