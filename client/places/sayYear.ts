import type { PlacesLine } from './placesLine.ts';
import { inForceOf, type Year } from './yearSteps.ts';

type Asked = Pick<PlacesLine, 'byArea' | 'byAreaMost'>;

/** The year in words: for now and for each later entry how many are too many for the floor, or that they fit. */
export function sayYear(year: Year, line: Pick<PlacesLine, 'enrolled' | 'byArea' | 'byAreaMost'>): string {
  const entry = inForceOf(year);
  const differs = entry !== null && entry.children !== line.enrolled;
  const note = differs ? ` The entry in force, from ${sayDate(entry.from)}, says ${entry.children}: mend one of the two.` : '';
  const later = year.steps.filter(({ kind }) => kind === 'promised');
  return [
    `Now: ${line.enrolled}, ${sayFits(line.enrolled, line)}.${note}`,
    ...later.map((step) => `From ${sayDate(step.from)}: ${step.children}, ${sayFits(step.children, step)}.`),
    ...(later.length === 0 ? ['Nobody is promised for later.'] : []),
  ].join(' ');
}

/** "which fits the floor", "2 too many for the floor" */
function sayFits(children: number, { byArea, byAreaMost }: Asked): string {
  if (byArea === null) return 'but what the floor takes is not known';
  const most = Math.max(byArea, byAreaMost ?? byArea);
  if (children <= byArea) return 'which fits the floor';
  if (children <= most) return 'and whether that fits the floor depends on the open questions';
  const [least, worst] = [children - most, children - byArea];
  return `${least < worst ? `${least} to ${worst}` : worst} too many for the floor`;
}

const sayDate = (date: Date): string => date.toLocaleDateString('en-GB', { day: 'numeric', month: 'long', year: 'numeric' });
