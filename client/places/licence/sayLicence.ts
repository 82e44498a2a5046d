import type { Licence } from './licenceOf.ts';

const bindingWords = {
  area: 'the floor',
  adults: 'the adults',
  group: 'the largest group that the rule allows',
  work: 'the places to work, which is a class rule',
} as const;

/** The answer in sentences: how many, what binds, and against how many are enrolled. */
export function sayLicence(licence: Licence): string[] {
  const { places, binding, enrolled, byArea, byAreaMost, byAdults, byGroup } = licence;
  if (places === null || binding === null) return ['How many children the room takes cannot be told yet.', `${enrolled} are enrolled.`];
  const said = [`The room takes ${places}. What binds: ${bindingWords[binding]}.`];
  const byRule = [byArea, byAdults, byGroup].filter((limit) => limit !== null);
  if (binding === 'work' && byRule.length > 0) said.push(`By the rule set alone it takes ${Math.min(...byRule)}.`);
  if (binding === 'area' && byAreaMost !== null && byArea !== null && byAreaMost > byArea)
    said.push(`The floor takes up to ${byAreaMost} if every open question is answered so that it counts.`);
  const over = enrolled - places;
  said.push(
    `${enrolled} ${enrolled === 1 ? 'is' : 'are'} enrolled: ${over > 0 ? `${over} more than that` : over === 0 ? 'not one place over' : `${-over} places over`}.`,
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
