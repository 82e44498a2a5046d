import { inflateSync } from 'node:zlib';

interface OpenedPdf {
  readonly objects: ReadonlyMap<string, string>;
  readonly streamOf: (id: string) => string;
  /** Each page's dictionary and what is drawn on it, in the order of the file. */
  readonly pages: readonly { readonly page: string; readonly content: string }[];
}

/** A PDF as Chromium prints it: no object streams. */
export function openPdf(file: Buffer): OpenedPdf {
  const objects = new Map<string, string>();
  for (const [, id, body] of file.toString('latin1').matchAll(/(\d+) 0 obj\n([\s\S]*?)\nendobj/g)) objects.set(id ?? '', body ?? '');
  const streamOf = (id: string): string => {
    const body = objects.get(id) ?? '';
    const data = /stream\n([\s\S]*)\nendstream/.exec(body)?.[1] ?? '';
    return body.includes('/FlateDecode') ? inflateSync(Buffer.from(data, 'latin1')).toString('latin1') : data;
  };
  const pages = [...objects.values()].filter((body) => /\/Type \/Page\b(?!s)/.test(body));
  const contentOf = (page: string): string => [...(/\/Contents (\d+) 0 R/.exec(page)?.slice(1) ?? [])].map(streamOf).join('\n');
  return { objects, streamOf, pages: pages.map((page) => ({ page, content: contentOf(page) })) };
}

/** Pages and words of a PDF as Chromium prints it: no object streams, fonts with a map to letters. */
export function readPdf(file: Buffer): { pages: number; text: string } {
  const pdf = openPdf(file);
  return { pages: pdf.pages.length, text: pageTexts(pdf).join('\f') };
}

/** The words of each page. */
export const pageTexts = (pdf: OpenedPdf): string[] =>
  pdf.pages.map(({ page, content }) => pageText(page, content, pdf.objects, pdf.streamOf));

/** Thinner than this is a line, drawn as a filled area (units of the page's own drawing, about 1/4 of a point). */
const LINE = 20;

/** Colours other than white and black that areas of the pages are filled with, lines left out, as "r g b" from 0 to 1. */
export function fillsOf(file: Buffer): string[] {
  const content = openPdf(file)
    .pages.map((each) => each.content)
    .join('\n');
  const colours = new Set<string>();
  let colour = '0 0 0';
  for (const [, set, width, height] of content.matchAll(/([\d.]+ [\d.]+ [\d.]+) rg\b|(-?[\d.]+) (-?[\d.]+) re\s+f\*?(?=\s)/g)) {
    if (set) colour = set;
    else if (Math.min(Math.abs(Number(width)), Math.abs(Number(height))) > LINE && !['0 0 0', '1 1 1'].includes(colour))
      colours.add(colour);
  }
  return [...colours];
}

type Letters = ReadonlyMap<number, string>;
interface Font {
  readonly letters: Letters;
  /** hex digits of one letter */
  readonly digits: number;
}

function pageText(page: string, content: string, objects: ReadonlyMap<string, string>, streamOf: (id: string) => string): string {
  const fonts = new Map<string, Font>();
  for (const [, name, id] of (/\/Font <<([^>]*)>>/.exec(page)?.[1] ?? '').matchAll(/\/(\w+) (\d+) 0 R/g)) {
    const font = objects.get(id ?? '') ?? '';
    const map = /\/ToUnicode (\d+) 0 R/.exec(font)?.[1];
    if (name && map) fonts.set(name, { letters: lettersOf(streamOf(map)), digits: font.includes('/Type0') ? 4 : 2 });
  }
  let font: Font | undefined;
  let text = '';
  for (const [token, name, hex] of content.matchAll(/\/(\w+) [\d.]+ Tf|<([0-9A-Fa-f]+)>|\bET\b|\bTm\b/g)) {
    if (name) font = fonts.get(name);
    else if (hex && font) text += said(hex, font);
    else if (token === 'ET' || token === 'Tm') text += ' ';
  }
  return text.replaceAll(/\s+/g, ' ');
}

function said(hex: string, { letters, digits }: Font): string {
  let text = '';
  for (let at = 0; at < hex.length; at += digits) text += letters.get(Number.parseInt(hex.slice(at, at + digits), 16)) ?? '';
  return text;
}

function lettersOf(map: string): Letters {
  const letters = new Map<number, string>();
  const hex = (text: string | undefined): number => Number.parseInt(text ?? '', 16);
  const word = (text: string | undefined): string => (text?.match(/.{4}/g) ?? []).map((part) => String.fromCharCode(hex(part))).join('');
  for (const [, block] of map.matchAll(/beginbfchar([\s\S]*?)endbfchar/g))
    for (const [, from, to] of (block ?? '').matchAll(/<([^>]*)>\s*<([^>]*)>/g)) letters.set(hex(from), word(to));
  for (const [, block] of map.matchAll(/beginbfrange([\s\S]*?)endbfrange/g)) {
    for (const [, low, high, to] of (block ?? '').matchAll(/<([^>]*)>\s*<([^>]*)>\s*<([^>]*)>/g)) {
      const start = word(to);
      for (let code = hex(low); code <= hex(high); code++)
        letters.set(code, start.slice(0, -1) + String.fromCharCode(start.charCodeAt(start.length - 1) + code - hex(low)));
    }
  }
  return letters;
}
