import type { QuestionState } from '../checks/sortFindings.ts';

/** What stands in the place of the open things when there are none. While checks are still looking nothing is said to be in order. */
export function sayNothingOpen(answer: QuestionState['answer'], left: number, isThinking: boolean): string {
  if (isThinking) return 'Still being worked out …';
  if (answer === 'no-rule') return 'Not checked: there is no check for this yet.';
  if (answer === 'does-not-apply') return 'No children are entered yet, so there is nothing to settle.';
  if (left > 0) return `Nothing else is open; ${left} ${left === 1 ? 'is left as it is' : 'are left as they are'}: see Checks at the room.`;
  return 'Nothing is open: the room takes the children enrolled.';
}
