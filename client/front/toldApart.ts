import { capital } from '../text/sayList.ts';

/** Shared leading words are left out from two on: one alone ("large", "small") may be what tells two trays apart. */
const SHARED_FROM = 2;

/**
 * What is written of a tray's name where there is little room: the whole name where it fits, else the kind after the
 * colon of "family: kind", else that without the words with which its neighbours of the family begin too.
 * @param others the names that stand beside it
 * @param fits whether a text has room whole
 */
export function toldApart(name: string, others: readonly string[], fits: (text: string) => boolean): string {
  const forms = [name, ...shorterForms(name, others)];
  return forms.find(fits) ?? (forms.at(-1) as string);
}

function shorterForms(name: string, others: readonly string[]): string[] {
  const { family, kind } = parts(name);
  if (family === '') return withoutAside(name, others);
  const siblings = others.filter((other) => other !== name).map(parts);
  const alike = siblings.filter((other) => other.family === family && first(other.kind) === first(kind)).map((other) => words(other.kind));
  const own = words(kind);
  const shared = alike.length === 0 ? 0 : sharedStart([own, ...alike]);
  const rest = shared >= SHARED_FROM ? [capital(own.slice(shared).join(' '))] : [];
  return [capital(kind), ...rest];
}

/** "Thermic tablets (paired slabs)": "Thermic tablets", unless something else is called that. */
function withoutAside(name: string, others: readonly string[]): string[] {
  const bare = name.replace(/\s*\([^()]*\)\s*$/, '');
  const isShared = others.some((other) => other !== name && other.startsWith(bare));
  return bare === '' || bare === name || isShared ? [] : [bare];
}

function parts(name: string): { family: string; kind: string } {
  const at = name.indexOf(': ');
  if (at < 1) return { family: '', kind: name };
  return { family: name.slice(0, at).trim(), kind: name.slice(at + 2).trim() };
}

const words = (text: string): string[] => text.split(/\s+/);
const first = (text: string): string => words(text)[0] ?? '';

/** How many words all begin with, one word left of each. */
function sharedStart(lists: readonly (readonly string[])[]): number {
  const most = Math.min(...lists.map((list) => list.length)) - 1;
  let count = 0;
  while (count < most && lists.every((list) => list[count] === lists[0]?.[count])) count += 1;
  return count;
}
