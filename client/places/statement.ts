import { sayCount } from '../text/sayCount.ts';
import { capital } from '../text/sayList.ts';
import type { PlacesLine } from './placesLine.ts';

type Name = NonNullable<PlacesLine['binding']>;
interface Limit {
  readonly name: Name;
  /** children it takes for certain */
  readonly takes: number;
  /** children it takes at the very most; null: nobody knows */
  readonly most: number | null;
}

/** The limits that are known, those of a must first. Mats found are a lower bound until that is proven. */
function limitsOf({ byArea, byAreaMost, byAdults, byGroup, byWork }: PlacesLine, areMatsProven: boolean): Limit[] {
  const limits: (Omit<Limit, 'takes'> & { takes: number | null })[] = [
    { name: 'area', takes: byArea, most: byAreaMost ?? byArea },
    { name: 'adults', takes: byAdults, most: byAdults },
    { name: 'group', takes: byGroup, most: byGroup },
    { name: 'work', takes: byWork, most: areMatsProven ? byWork : null },
  ];
  return limits.filter((limit): limit is Limit => limit.takes !== null);
}

/** The first of those that take the fewest; null: there is none. */
const leastOf = (limits: readonly Limit[]): Limit | null =>
  limits.reduce<Limit | null>((least, limit) => (least === null || limit.takes < least.takes ? limit : least), null);

const isSure = (limit: Limit): boolean => limit.most !== null;

/** In one sentence: the limits that count, those of a must first, against the children enrolled. */
export function statementOf(line: PlacesLine, areMatsProven: boolean): string {
  const limits = limitsOf(line, areMatsProven);
  const { enrolled } = line;
  if (limits.length === 0) return 'How many children the room takes cannot be told yet.';
  const short = limits.filter(({ takes }) => takes < enrolled);
  const told = [leastOf(limits), leastOf(limits.filter(isSure)), ...short];
  const words = limits.filter((limit) => told.includes(limit)).map((limit) => sayLimit(limit));
  const against = short.length > 0 ? short.map((limit) => sayShort(limit, enrolled)).join(', ') : sayOver(leastOf(limits), enrolled);
  const sentence = `${words.join(', ')}; ${enrolled} ${enrolled === 1 ? 'is' : 'are'} enrolled: ${against}.`;
  return capital(sentence);
}

/** The figures that the two kinds of limit come from. */
type Limits = Pick<PlacesLine, 'byArea' | 'byAreaMost' | 'byAdults' | 'byGroup' | 'byWork'>;

const limitWords = { area: 'the floor binds', adults: 'the adults bind', group: 'the largest group binds' } as const;

/** What the rule set allows by the limit that binds; null: none is known. */
export function leastByRule({ byArea, byAdults, byGroup }: Pick<Limits, 'byArea' | 'byAdults' | 'byGroup'>) {
  const limits = [
    { name: 'area', takes: byArea },
    { name: 'adults', takes: byAdults },
    { name: 'group', takes: byGroup },
  ] as const;
  const known = limits.flatMap(({ name, takes }) => (takes === null ? [] : [{ name, takes }]));
  return known.reduce<(typeof known)[number] | null>((p, q) => (p === null || q.takes < p.takes ? q : p), null);
}

/** What binds by the rule set, and apart from it the places to work; the same words on the sheet and on the licence sheet. */
export function sayBinding(limits: Limits, areMatsProven: boolean, ruleName: string): string[] {
  const { byArea, byAreaMost, byWork } = limits;
  const least = leastByRule(limits);
  const said: string[] = [];
  if (!least) said.push('How many children the room takes by the rule set cannot be told yet.');
  else {
    const range = least.name === 'area' && byAreaMost !== null && byAreaMost > least.takes ? ` to ${byAreaMost}` : '';
    said.push(`By the rule set ${ruleName} (the licence) the room takes ${least.takes}${range}: ${limitWords[least.name]}.`);
    if (range !== '') said.push('Which of them hangs on what your authority has not answered yet.');
    if (byArea === null) said.push('How many the floor takes cannot be told yet.');
  }
  if (byWork !== null)
    said.push(
      areMatsProven
        ? `By places to work in this layout it takes ${byWork}, which is no licensing limit.`
        : `By places to work in this layout ${byWork} were found, which is no licensing limit; that no more can be had is not proven.`,
    );
  return said;
}

function sayLimit({ name, takes, most }: Limit): string {
  switch (name) {
    case 'area':
      return `the floor takes ${most !== null && most > takes ? `${takes} to ${most}` : takes}`;
    case 'adults':
      return `the adults may look after ${takes}`;
    case 'group':
      return `a group may have ${sayCount(takes, 'child', 'children')}`;
    case 'work':
      return `there ${takes === 1 ? 'is' : 'are'} ${most === null ? 'at least ' : ''}${sayCount(takes, 'place')} to work`;
  }
}

const forWhom: Readonly<Record<Exclude<Name, 'work'>, string>> = { area: 'the floor', adults: 'the adults', group: 'one group' };

function sayShort({ name, takes, most }: Limit, enrolled: number): string {
  const short = enrolled - takes;
  if (name === 'work') return most === null ? `a place to work for ${short} more was not found` : `no place to work for ${short}`;
  const surely = enrolled - (most ?? takes);
  if (surely <= 0) return `whether ${forWhom[name]} takes them all depends on the open questions`;
  return `${surely < short ? `${surely} to ${short}` : short} too many for ${forWhom[name]}`;
}

function sayOver(least: Limit | null, enrolled: number): string {
  const over = (least?.takes ?? enrolled) - enrolled;
  if (over === 0) return 'not one place over';
  return `${least && !isSure(least) ? 'at least ' : ''}${sayCount(over, 'place')} over`;
}
