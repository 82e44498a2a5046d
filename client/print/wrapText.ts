import type { Measure } from './marks.ts';

/**
 * Breaks a text into lines no wider than `width` mm at a size (mm): at blanks; a word too long for a line is broken
 * where the line is full. Nothing is left out.
 */
export function wrapText(text: string, width: number, measure: Measure, size: number, weight = 400): string[] {
  const result: string[] = [];
  let line = '';
  for (const word of withUnits(text)
    .split(/[ \t\n\r]+/)
    .filter((part) => part !== '')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (measure(longer, size, weight) <= width) {
      line = longer;
      continue;
    }
    if (line !== '') result.push(line);
    line = word;
    while (measure(line, size, weight) > width && [...line].length > 1) {
      const head = fitting(line, width, measure, size, weight);
      result.push(head);
      line = line.slice(head.length);
    }
  }
  return line === '' ? result : [...result, line];
}

/** A number stays with its unit. */
const withUnits = (text: string): string => text.replace(/(\d) (?=(?:m|m²|mm|kg|%)(?:[\s.,;:)]|$))/g, '$1\u00a0');

/** As many letters as fit, at least one. */
function fitting(word: string, width: number, measure: Measure, size: number, weight: number): string {
  const letters = [...word];
  let [least, most] = [1, letters.length];
  while (least < most) {
    const middle = Math.ceil((least + most) / 2);
    if (measure(letters.slice(0, middle).join(''), size, weight) <= width) least = middle;
    else most = middle - 1;
  }
  return letters.slice(0, least).join('');
}

/** One line: the text whole, or as much as fits with "…". */
export function cutText(text: string, width: number, measure: Measure, size: number, weight = 400, isTitle = false): string {
  if (measure(text, size, weight, isTitle) <= width) return text;
  let letters = [...text];
  while (letters.length > 1 && measure(`${letters.join('').trimEnd()}…`, size, weight, isTitle) > width) letters = letters.slice(0, -1);
  return `${letters.join('').trimEnd()}…`;
}
