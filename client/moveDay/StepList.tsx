import { useState } from 'react';
import { useMayChange } from '../session/hooks.ts';
import { nameOfArrangement } from '../text/nameOfArrangement.ts';
import { oneStop } from '../ui/oneStop.ts';
import { TextLink } from '../ui/TextLink.tsx';
import type { Day } from './dayOf.ts';
import { StepItem } from './StepItem.tsx';
import type { Saying } from './sayStep.ts';
import type { StepActions } from './stepActions.ts';

interface Props {
  readonly day: Day;
  readonly saying: Saying;
  readonly actions: StepActions;
  readonly chosen: string | null;
  readonly onChoose: (step: string | null) => void;
}

/** What is done, one thing after the other, with ticks that everybody sees. */
export function StepList({ day, saying, actions, chosen, onChoose }: Props) {
  const done = day.steps.filter(({ state }) => state.state === 'done').length;
  const cannot = day.steps.filter(({ state }) => state.state === 'cannot').length;
  const broken = day.steps.filter(({ trouble }) => trouble !== null).length;
  const { aside, isLeast } = day.plan.sequence;
  const mayChange = useMayChange();
  const [isAsked, setAsked] = useState(false);
  return (
    <section className="steps" aria-labelledby="steps-head">
      <header className="panel-head">
        <h2 id="steps-head">In this order</h2>
        <span className="aside">
          to “{nameOfArrangement(saying.plan.to.arrangement)}”, {done} of {day.steps.length} done
          {cannot > 0 && `, ${cannot} cannot be done`}
        </span>
      </header>
      {broken > 0 && (
        <p className="step-broken" role="status">
          {broken === 1 ? 'One step does' : `${broken} steps do`} not work in the order made by hand: it says where.
        </p>
      )}
      <ol ref={oneStop} className="step-list">
        {day.steps.map((one) => (
          <StepItem
            key={one.step.id}
            one={one}
            day={day}
            saying={saying}
            actions={actions}
            isChosen={one.step.id === chosen}
            onChoose={(isOpen) => onChoose(isOpen ? one.step.id : null)}
          />
        ))}
      </ol>
      <p className="aside steps-foot">
        The order follows from what stands in the way of what. Change it by hand; what no longer works is marked.
        {aside.length > 0 &&
          ` ${aside.length === 1 ? 'One piece has' : `${aside.length} pieces have`} to be set aside first: ${isLeast ? 'fewer will not do' : 'perhaps fewer would do, the search for fewer was given up'}.`}
        {isAsked &&
          ' Whether a carried piece gets round every corner on its way is not worked out, nor how wide the ways are while something is set aside: walk them with the tape first. Masses of furniture are not known: when in doubt, take two.'}
      </p>
      <div className="verbs">
        <TextLink aria-expanded={isAsked} onPress={() => setAsked(!isAsked)}>
          What is not worked out?
        </TextLink>
        {day.isHandOrder && mayChange && <TextLink onPress={actions.resetOrder}>Back to the order worked out</TextLink>}
      </div>
    </section>
  );
}
