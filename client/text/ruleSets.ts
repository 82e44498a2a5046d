import { ruleSetOf, ruleSets } from '#model/standards/ruleSets.ts';

/** The sets to choose from; one that a file names and we do not know stays in the list. */
export function ruleSetOptions(current: string): { value: string; text: string }[] {
  const known = ruleSets.map((set) => ({ value: set.id, text: set.isGuideline ? `${set.name} (guideline)` : set.name }));
  return known.some((set) => set.value === current) ? known : [...known, { value: current, text: `${current} (not known here)` }];
}

/** Whose rules count for the ways out; none: not chosen yet. */
export const exitRuleOptions = [
  { value: 'none', text: 'Not chosen' },
  { value: 'us-ibc', text: 'International Building Code' },
  { value: 'england-adb', text: 'England, Approved Document B' },
] as const;
export type ExitRuleChoice = (typeof exitRuleOptions)[number]['value'];

type ExitRules = Exclude<ExitRuleChoice, 'none'>;

export const exitRulesName = (id: ExitRules): string => exitRuleOptions.find(({ value }) => value === id)?.text ?? id;

/** The rules for ways out of the country whose licence is chosen; null: none of that country is known here. */
export function exitRulesThatSuit(ruleSet: string): ExitRules | null {
  if (ruleSet.startsWith('us-')) return 'us-ibc';
  return ruleSet === 'england' ? 'england-adb' : null;
}

/** Kinds of service that a rule set asks for; none: it does not ask. */
export function servicesOf(id: string): string[] {
  const set = ruleSetOf(id);
  const tables = [set?.space, set?.ratios].filter((table) => table !== null && table !== undefined);
  const names = tables.flatMap((table) => ('rows' in table ? [] : Object.keys(table)));
  return [...new Set(names)];
}
