import type { Finding } from '#model/findings/finding.ts';
import { questionOf } from './sortFindings.ts';

/** One thing to measure or answer, and how many checks of its question want the same. */
export interface Wanted {
  readonly wanted: string;
  readonly finding: Finding;
  /** Checks beside the first. */
  readonly others: number;
}

/** What could not be told, each thing that is wanted once for a question: four checks that ask the same are one answer. */
export function wantedOnce(unknown: readonly Finding[]): Wanted[] {
  const byWords = new Map<string, { wanted: string; finding: Finding; others: number }>();
  for (const finding of unknown) {
    const wanted = finding.missing.length === 0 ? finding.message : finding.missing.join('; ');
    const key = `${questionOf(finding.rule)} ${wanted}`;
    const known = byWords.get(key);
    if (known) known.others += 1;
    else byWords.set(key, { wanted, finding, others: 0 });
  }
  return [...byWords.values()];
}
