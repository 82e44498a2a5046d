import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';

/** One row of `tests/reference/data/materials.json`: lengths mm, mass kg, ages in months. */
export interface SourceMaterial {
  readonly id: string;
  readonly name: string;
  readonly area: string;
  readonly strand: string;
  readonly isolates: string;
  readonly mode: string;
  readonly pieces: number | null;
  readonly dims_mm: { readonly w: number; readonly d: number; readonly h: number } | null;
  readonly mass_kg: number | null;
  readonly smallest_mm: number | null;
  readonly work_place: string;
  readonly mat_mm: { readonly w: number; readonly d: number } | null;
  readonly age_from_months: number;
  readonly age_to_months: number;
  readonly prerequisites: readonly string[];
  readonly prerequisite_confidence: Readonly<Record<string, string>>;
  readonly source: string;
  readonly confidence: string;
  readonly control_of_error: string;
  readonly choking_under3: boolean;
  readonly field_confidence: Readonly<Record<string, string>>;
  readonly note: string;
}

interface OrderConstraint {
  readonly before: string;
  readonly after: string;
  readonly source: string;
  readonly strength: 'published' | 'common practice';
  readonly note: string;
}
interface GradeItem {
  readonly n: number;
  readonly label: string;
  readonly materialIds: readonly string[];
}
export interface MaterialsSource {
  readonly materials: readonly SourceMaterial[];
  /** The five grades of the 1912 handbook, chapter XX. */
  readonly publishedOrder: readonly { readonly grade: number; readonly items: readonly GradeItem[] }[];
  /** The order of the 1914 text. */
  readonly publishedOrder1914: {
    readonly steps: readonly {
      readonly n: number;
      readonly materialIds: readonly string[];
      readonly parallelWith?: readonly number[];
      readonly note?: string;
    }[];
  };
  readonly orderConstraints: readonly OrderConstraint[];
  readonly disagreements: readonly { readonly topic: string; readonly a: string; readonly b: string; readonly use: string }[];
}

/** The table of materials that the catalogue is made from. */
export function readMaterialsSource(): MaterialsSource {
  const path = resolve(import.meta.dirname, '../../reference/data/materials.json');
  return JSON.parse(readFileSync(path, 'utf8')) as MaterialsSource;
}
