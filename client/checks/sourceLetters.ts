import type { Finding } from '#model/findings/finding.ts';

/** Source key -> the letter it is referred to by in this column: a, b, c … in the order of appearance. */
export function sourceLetters(findings: readonly Finding[]): ReadonlyMap<string, string> {
  const letters = new Map<string, string>();
  for (const finding of findings) {
    for (const source of finding.sources) if (!letters.has(source)) letters.set(source, letterAt(letters.size));
  }
  return letters;
}

/** a … z, aa, ab … */
function letterAt(index: number): string {
  const letter = String.fromCharCode(97 + (index % 26));
  return index < 26 ? letter : letterAt(Math.floor(index / 26) - 1) + letter;
}
