/** px that a text takes on the drawing */
export type MeasureText = (text: string) => number;

const MORE = '…';

/**
 * Breaks a tray's name into lines no wider than `width` px: at blanks, a word too long for a line is cut, and what does
 * not fit into `lines` lines ends in "…".
 */
export function wrapName(name: string, width: number, measure: MeasureText, lines = 2): string[] {
  const words = name.split(/\s+/).filter((word) => word !== '');
  const result: string[] = [];
  let line = '';
  let at = 0;
  while (at < words.length) {
    const word = words[at] as string;
    const longer = line === '' ? word : `${line} ${word}`;
    if (measure(longer) <= width) {
      line = longer;
      at += 1;
      continue;
    }
    if (result.length === lines - 1 || line === '') break;
    result.push(line);
    line = '';
  }
  if (at === words.length) return line === '' ? result : [...result, line];
  const rest = line === '' ? (words[at] as string) : `${line} ${words[at] as string}`;
  return [...result, cut(rest, width, measure)];
}

/** As many letters as fit together with "…". */
function cut(text: string, width: number, measure: MeasureText): string {
  let letters = [...text];
  while (letters.length > 1 && measure(letters.join('').trimEnd() + MORE) > width) letters = letters.slice(0, -1);
  return letters.join('').trimEnd() + MORE;
}
