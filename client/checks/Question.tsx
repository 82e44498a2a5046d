import { isIn } from '#model/analysis/groupFindings.ts';
import { useUnits, useView } from '../session/hooks.ts';
import { FindingItem } from './FindingItem.tsx';
import { MatWords } from './MatWords.tsx';
import type { QuestionState } from './sortFindings.ts';

/** One of the nine questions, and what was found. */
export function Question({ state, letters }: { state: QuestionState; letters: ReadonlyMap<string, string> }) {
  const view = useView();
  const units = useUnits();
  return (
    <section aria-labelledby={`question-${state.id}`}>
      <h3 className="question" id={`question-${state.id}`}>
        {state.asks}
      </h3>
      {state.problems.length > 0 ? (
        <ul>
          {state.problems.map((group) => (
            <FindingItem key={group.lead.key} group={group} isShown={isIn(group, view.finding)} letters={letters} units={units} />
          ))}
        </ul>
      ) : (
        <p className="question-answer">{answerWords[state.answer]}</p>
      )}
      {state.problems.length > 0 && state.unknown > 0 && <p className="aside">Something is not known: see "Measure these next".</p>}
      {state.id === 'floor' && <MatWords />}
    </section>
  );
}

const answerWords: Readonly<Record<QuestionState['answer'], string>> = {
  problem: '',
  'cannot-tell': 'Not known yet: see "Measure these next".',
  fine: 'Yes, as far as the checks can tell.',
  'does-not-apply': 'Nothing here to look at yet.',
  'no-rule': 'Not checked: there is no check for this yet.',
};
