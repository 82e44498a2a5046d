import type { Licence } from './licenceOf.ts';

const limitWords = { area: 'the floor', adults: 'the adults', group: 'the largest group that the rule allows' } as const;

/** What the rule set allows by the limit that binds; null: none is known. */
export function leastByRule({ byArea, byAdults, byGroup }: Pick<Licence, 'byArea' | 'byAdults' | 'byGroup'>) {
  const limits = [
    { name: 'area', takes: byArea },
    { name: 'adults', takes: byAdults },
    { name: 'group', takes: byGroup },
  ] as const;
  const known = limits.flatMap(({ name, takes }) => (takes === null ? [] : [{ name, takes }]));
  return known.reduce<(typeof known)[number] | null>((p, q) => (p === null || q.takes < p.takes ? q : p), null);
}

/** The answer in sentences: what the rule set allows against how many are enrolled, then the places to work, which are a class rule. */
export function sayLicence(licence: Licence): string[] {
  const { ruleSet, enrolled, byArea, byAreaMost, byWork, areMatsProven } = licence;
  const least = leastByRule(licence);
  const enrolledWords = `${enrolled} ${enrolled === 1 ? 'is' : 'are'} enrolled`;
  const said: string[] = [];
  if (!least) said.push('How many children the room takes by the rule set cannot be told yet.', `${enrolledWords}.`);
  else {
    said.push(`By the rule set ${ruleSet} the room takes ${least.takes}. What binds: ${limitWords[least.name]}.`);
    if (byArea === null) said.push('How many the floor takes cannot be told yet.');
    if (least.name === 'area' && byAreaMost !== null && byAreaMost > least.takes)
      said.push(`The floor takes up to ${byAreaMost} if every open question is answered so that it counts.`);
    const over = enrolled - least.takes;
    said.push(`${enrolledWords}: ${over > 0 ? `${over} more than that` : over === 0 ? 'not one place over' : `${-over} places over`}.`);
  }
  if (byWork !== null)
    said.push(
      areMatsProven
        ? `There are places to work for ${byWork}, which is a class rule.`
        : `Places to work were found for ${byWork}, which is a class rule; that no more can be had is not proven.`,
    );
  return said;
}

/** Cut where it would push the sheet onto a second page. */
export const short = (text: string, most: number): string => (text.length <= most ? text : `${text.slice(0, most - 1).trimEnd()}…`);

/** "shelf 1 0.58, shelf 2 0.51 and 4 more" */
export function sayItems(
  items: readonly { readonly label: string; readonly m2: number }[],
  say: (m2: number) => string,
  most: number,
): string {
  const parts: string[] = [];
  for (const { label, m2 } of items) {
    const part = `${short(label, 28)} ${say(m2)}`;
    if (parts.length > 0 && [...parts, part].join(', ').length > most) break;
    parts.push(part);
  }
  const more = items.length - parts.length;
  return `${parts.join(', ')}${more > 0 ? ` and ${more} more` : ''}`;
}
