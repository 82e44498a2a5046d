/** Capacity rule sets in words, in the order they are offered. */
export const ruleSetNames = [
  { value: 'own', text: 'Own figures of the class' },
  { value: 'england', text: 'England' },
  { value: 'wales', text: 'Wales (day care)' },
  { value: 'scotland', text: 'Scotland' },
  { value: 'ireland', text: 'Ireland' },
  { value: 'us-california', text: 'California' },
  { value: 'us-washington', text: 'Washington State' },
  { value: 'us-massachusetts', text: 'Massachusetts' },
  { value: 'us-florida', text: 'Florida' },
  { value: 'us-new-york', text: 'New York (nursery)' },
  { value: 'us-cfoc', text: 'Caring for Our Children (guideline)' },
  { value: 'australia', text: 'Australia (Victoria reading)' },
  { value: 'new-zealand', text: 'New Zealand' },
] as const;

/** An id we do not know is shown as it is. */
export const ruleSetName = (id: string): string => ruleSetNames.find((set) => set.value === id)?.text ?? id;

/** The sets to choose from; one that a file names and we do not know stays in the list. */
export function ruleSetOptions(current: string): { value: string; text: string }[] {
  const known = ruleSetNames.map((set) => ({ value: set.value as string, text: set.text as string }));
  return known.some((set) => set.value === current) ? known : [...known, { value: current, text: `${current} (not known here)` }];
}
