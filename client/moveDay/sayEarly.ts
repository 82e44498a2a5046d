import { sayList } from '../text/sayList.ts';
import type { Day, DayStep } from './dayOf.ts';

/** What may not be so yet when a step is done before the one it waits for. */
const questions = {
  'in-the-way': 'is the place free?',
  rug: 'is the place free?',
  aside: 'is the place free?',
  emptied: 'is it empty?',
} as const;

/**
 * What a step that is ticked waits for though: people know better, but nobody should find it out with a shelf in their hands.
 * "Step 3, which it waits for, is not done: is the place free?"
 * @returns null when all that it waits for is done
 */
export function sayEarly({ steps }: Pick<Day, 'steps'>, { step }: Pick<DayStep, 'step'>): string | null {
  const open = steps.filter((other) => step.after.includes(other.step.id) && other.state.state !== 'done');
  if (open.length === 0) return null;
  const whys = step.waits.filter((wait) => open.some((other) => other.step.id === wait.step)).map(({ why }) => why);
  const asked = [...new Set(whys.flatMap((why) => (why in questions ? questions[why as keyof typeof questions] : [])))];
  const numbers = sayList(open.map(({ number }) => String(number)));
  const subject =
    open.length === 1 ? `Step ${numbers}, which it waits for, is not done` : `Steps ${numbers}, which it waits for, are not done`;
  return asked.length === 0 ? `${subject}.` : `${subject}: ${asked.map((one) => one.replace('?', '')).join(', and ')}?`;
}
