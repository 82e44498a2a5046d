import type { Classroom } from '#model/schema/types.ts';
import { categoryWords, floorCategories } from '#model/standards/deductionMatrix.ts';
import { ruleSetOf } from '#model/standards/ruleSets.ts';

/** What the chosen rules leave open, and what was answered for others: an answer is kept when the rule set is changed to compare. */
export function askedQuestions({ ruleSet, asked }: Pick<Classroom, 'ruleSet' | 'asked'>): { category: string; text: string }[] {
  const codes = ruleSetOf(ruleSet)?.deductions;
  const open = floorCategories.filter((category) => category in asked || !codes || codes[category] === '?' || codes[category] === 'X');
  const unknown = Object.keys(asked).filter((category) => !floorCategories.some((known) => known === category));
  return [
    ...open.map((category) => ({ category, text: categoryWords[category] })),
    ...unknown.map((category) => ({ category, text: category })),
  ];
}
