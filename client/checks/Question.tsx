import { useState } from 'react';
import { type FindingGroup, isIn } from '#model/analysis/groupFindings.ts';
import { leavesPracticalLife } from '../front/practicalLife.ts';
import { ProveMats } from '../mats/ProveMats.tsx';
import { MendWays } from '../mend/MendWays.tsx';
import { isOfWidth } from '../plan/reportParts.ts';
import { useScene, useUnits, useViewOf } from '../session/hooks.ts';
import { TextLink } from '../ui/TextLink.tsx';
import { AllInStep } from './AllInStep.tsx';
import { ChecksBehind } from './ChecksBehind.tsx';
import { FindingItem } from './FindingItem.tsx';
import { MatWords } from './MatWords.tsx';
import { PracticalLifeWords } from './PracticalLifeWords.tsx';
import { sayAnswer } from './sayAnswer.ts';
import { sayWhere } from './sayWhere.ts';
import type { QuestionState } from './sortFindings.ts';

interface Props {
  readonly state: QuestionState;
  readonly letters: ReadonlyMap<string, string>;
  readonly isThinking: boolean;
}

/** So many of one question are read at once; the others come when asked for. */
const AT_FIRST = 30;

/** One of the nine questions, and what was found. */
export function Question({ state, letters, isThinking }: Props) {
  const shown = useViewOf('finding');
  const units = useUnits();
  const scene = useScene();
  const [isWhole, setWhole] = useState(false);
  const isLate = (group: FindingGroup, i: number): boolean => i >= AT_FIRST && !isWhole && !isIn(group, shown);
  const late = state.problems.filter(isLate).length;
  return (
    <section aria-labelledby={`question-${state.id}`}>
      <h3 className="question" id={`question-${state.id}`}>
        {state.asks}
      </h3>
      {state.id === 'way' && <MendWays isAsked={state.problems.some(isAboutWidth)} />}
      {state.id === 'order' && state.problems.filter(({ lead }) => lead.rule === 'order/sequence').length > 1 && (
        <AllInStep findings={state.problems.map(({ lead }) => lead)} />
      )}
      {state.problems.length > 0 ? (
        <ul>
          {state.problems.map((group, i) => {
            const { key, sources } = group.lead;
            if (isLate(group, i)) return null;
            const refs = sources.flatMap((source) => letters.get(source) ?? []).join(', ');
            return <FindingItem key={key} {...{ group, refs, units }} isShown={isIn(group, shown)} where={sayWhere(group.lead, scene)} />;
          })}
        </ul>
      ) : (
        <p className="question-answer">{sayAnswer(state.answer, isThinking)}</p>
      )}
      {late > 0 && (
        <p className="question-answer">
          <TextLink onPress={() => setWhole(true)}>Show {late} more</TextLink>
        </p>
      )}
      {state.problems.length > 0 && state.unknown > 0 && <p className="aside">Something is not known: see "Measure these next".</p>}
      {state.id === 'floor' && (
        <>
          <MatWords />
          <ProveMats />
        </>
      )}
      {state.id === 'order' && <OrderLeftAlone />}
      <ChecksBehind asks={state.asks} answers={state.answers} />
    </section>
  );
}

function OrderLeftAlone() {
  return leavesPracticalLife(useScene()) ? <PracticalLifeWords /> : null;
}

/** What a move could widen: a way to a front, or a narrow place that holds one back. */
const isAboutWidth = ({ lead }: FindingGroup): boolean => isOfWidth(lead) && lead.severity !== 'note' && lead.messageKey !== 'covered';
