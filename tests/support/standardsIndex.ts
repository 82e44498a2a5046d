import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';

export interface IndexRow {
  readonly id: string;
  readonly values: Record<string, unknown>;
  readonly document: string;
  readonly clause: string;
  readonly edition: string;
  readonly jurisdiction: string;
  readonly status: string;
}
export interface WorkedExample {
  readonly id: string;
  readonly kind: string;
  readonly inputs: Record<string, unknown>;
  readonly expected: Record<string, unknown>;
}
interface Index {
  readonly rows: readonly IndexRow[];
  readonly deduction_matrix: {
    readonly categories: readonly string[];
    readonly by_jurisdiction: Readonly<Record<string, { readonly rules: string; readonly codes: Readonly<Record<string, string>> }>>;
  };
  readonly worked_examples: readonly WorkedExample[];
}

/** The index of published standards, kept apart from the tables of the model: tests/reference/data/standards.json. */
export const index = JSON.parse(readFileSync(resolve(import.meta.dirname, '../reference/data/standards.json'), 'utf8')) as Index;

export function indexRow(id: string): IndexRow {
  const row = index.rows.find((r) => r.id === id);
  if (!row) throw new Error(`no row ${id}`);
  return row;
}
export function workedExample(id: string): WorkedExample {
  const example = index.worked_examples.find((e) => e.id === id);
  if (!example) throw new Error(`no worked example ${id}`);
  return example;
}
