import type { QuestionState } from './sortFindings.ts';

const answerWords: Readonly<Record<QuestionState['answer'], string>> = {
  problem: '',
  'cannot-tell': 'Not known yet: see "Measure these next".',
  fine: 'Yes, as far as the checks can tell.',
  'does-not-apply': 'Nothing here to look at yet.',
  'no-rule': 'Not checked: there is no check for this yet.',
};

/** A question's answer where it has no problem. While checks are still looking nothing is said to be in order. */
export function sayAnswer(answer: QuestionState['answer'], isThinking: boolean): string {
  return isThinking && answer !== 'cannot-tell' ? 'Still looking …' : answerWords[answer];
}
