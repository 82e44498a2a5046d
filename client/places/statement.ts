import { sayCount } from '../text/sayCount.ts';
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
  return sentence.charAt(0).toUpperCase() + sentence.slice(1);
}

/** What binds, in words, with the rule it comes from; "": nothing is known. */
export function bindingOf(line: PlacesLine, areMatsProven: boolean, ruleName: string): string {
  const limits = limitsOf(line, areMatsProven);
  const sure = leastOf(limits.filter(isSure));
  if (!sure) return '';
  const rules: Readonly<Record<Name, string>> = {
    area: `the floor, by the rule in force (${ruleName})`,
    adults: `the adults, by the rule in force (${ruleName})`,
    group: `the size of a group, by the rule in force (${ruleName})`,
    work: 'the places to work, a class rule',
  };
  const binds = `What binds for certain: ${rules[sure.name]}, ${sayCount(sure.takes, 'child', 'children')}.`;
  const mayBind = leastOf(limits);
  return mayBind && mayBind !== sure
    ? `${binds} The places to work may bind sooner: how many mats fit at the very most is not proven.`
    : binds;
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
