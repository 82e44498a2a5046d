import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';

/** The rows of a plain comma-separated file of tests/reference/data, by the names of its first line. */
export function readCsv(name: string): Record<string, string>[] {
  const text = readFileSync(resolve(import.meta.dirname, '../reference/data', name), 'utf8');
  const [head = '', ...lines] = text.trim().split(/\r?\n/);
  const names = head.split(',');
  return lines.map((line) => {
    const cells = line.split(',');
    return Object.fromEntries(names.map((n, i) => [n, cells[i] ?? '']));
  });
}
