import type { PlainRoomChange } from '#model/rules/plainRoom.ts';

/** Words, or the name of an option or of another check. */
export type Span = string | { readonly code: string };
type Block =
  | { readonly kind: 'words'; readonly spans: readonly Span[] }
  | { readonly kind: 'list'; readonly items: readonly (readonly Span[])[] }
  | { readonly kind: 'room'; readonly change: PlainRoomChange };
export interface PageSection {
  readonly heading: string;
  readonly blocks: readonly Block[];
}
/** A rule's page as data: nothing in it is markup. */
export interface RulePage {
  readonly asks: string;
  readonly sections: readonly PageSection[];
}

/** Marks of other markdown: such a page would be shown wrong, so it is refused. */
const notRead = /^\s*\||\*\*|\]\(|^\s*>|^\s*\d+\. |^#{3,} |<\/?[a-z]/;

/**
 * Reads a page of `shared-model/rules`: headings, paragraphs, lists, names between backticks, one room in JSON.
 * Runs when the page is built, so the browser is sent data.
 * @throws Error on anything else, with the line.
 */
export function readRulePage(text: string): RulePage {
  const sections: { heading: string; blocks: Block[] }[] = [];
  let asks = '';
  const lines = text.split('\n');
  for (let at = 0; at < lines.length; at++) {
    const line = lines[at] ?? '';
    if (line.trim() === '') continue;
    if (notRead.test(line)) throw new Error(`line ${at + 1} is not of a kind that rule pages have: ${line}`);
    if (line.startsWith('# ')) asks = line.slice(2).trim();
    else if (line.startsWith('## ')) sections.push({ heading: line.slice(3).trim(), blocks: [] });
    else {
      const found = readBlock(lines, at);
      sections.at(-1)?.blocks.push(found.block);
      at = found.last;
    }
  }
  return { asks, sections };
}

function readBlock(lines: readonly string[], from: number): { block: Block; last: number } {
  const isEnd = (line: string | undefined): boolean => line === undefined || line.trim() === '' || line.startsWith('#');
  const first = lines[from] ?? '';
  let last = from;
  if (first.startsWith('```')) {
    const end = lines.indexOf('```', from + 1);
    if (end === -1) throw new Error(`the block that begins at line ${from + 1} does not end`);
    return { block: { kind: 'room', change: JSON.parse(lines.slice(from + 1, end).join('\n')) as PlainRoomChange }, last: end };
  }
  const isList = first.startsWith('- ');
  while (!isEnd(lines[last + 1]) && (isList || !lines[last + 1]?.startsWith('- '))) last += 1;
  const own = lines.slice(from, last + 1);
  if (!isList) return { block: { kind: 'words', spans: readSpans(own.join(' ')) }, last };
  const items: string[] = [];
  for (const line of own) {
    if (line.startsWith('- ')) items.push(line.slice(2));
    else items[items.length - 1] = `${items.at(-1) ?? ''} ${line.trim()}`;
  }
  return { block: { kind: 'list', items: items.map(readSpans) }, last };
}

/** Words with names between backticks. */
export function readSpans(text: string): Span[] {
  return text.split('`').flatMap((part, i): Span[] => (i % 2 === 1 ? [{ code: part }] : part === '' ? [] : [part]));
}
