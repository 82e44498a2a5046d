import { leastByRule, sayBinding } from '../statement.ts';
import type { Licence } from './licenceOf.ts';

/** The answer in sentences: what binds, and how many are enrolled against what the rule set allows. */
export function sayLicence(licence: Licence): string[] {
  const { ruleSet, enrolled, areMatsProven } = licence;
  const least = leastByRule(licence);
  const enrolledWords = `${enrolled} ${enrolled === 1 ? 'is' : 'are'} enrolled`;
  const binding = sayBinding(licence, areMatsProven, ruleSet);
  if (!least) return [...binding, `${enrolledWords}.`];
  const over = enrolled - least.takes;
  const most = least.name === 'area' ? (licence.byAreaMost ?? least.takes) : least.takes;
  const isOpen = over > 0 && enrolled <= most;
  const against = isOpen
    ? 'whether that is too many hangs on the open questions'
    : over > 0
      ? `${over} more than the licence takes`
      : over === 0
        ? 'not one place over'
        : `${-over} places over`;
  return [...binding, `${enrolledWords}: ${against}.`];
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
