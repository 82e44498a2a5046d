import { useSyncExternalStore } from 'react';
import { areMatsProven } from '../places/placesLine.ts';
import { useAnalyst, useArrangement, useClassroom, useReportOf, useSession } from '../session/hooks.ts';
import { Button } from '../ui/Button.tsx';
import { TextLink } from '../ui/TextLink.tsx';
import { proofStoreOf } from './proofStore.ts';

/** Proves how many mats lie at once, for who asks: it takes from seconds to minutes, and can be stopped. */
export function ProveMats() {
  const store = proofStoreOf(useSession(), useAnalyst());
  const state = useSyncExternalStore(store.subscribe, store.state);
  const isProven = useReportOf(areMatsProven);
  const isProving = state.at === 'proving';
  const { id } = useArrangement();
  const { arrangements } = useClassroom();
  if (isProven && !isProving) return null;
  const other = state.at === 'proving' && state.arrangement !== id ? arrangements.find((one) => one.id === state.arrangement) : undefined;
  return (
    <section className="mend" aria-label="The proof of the mats">
      {state.at === 'rest' && state.word !== null && (
        <p className="aside" data-told>
          {state.word}
        </p>
      )}
      {isProving && (
        <p className="aside" data-testid="proof-progress">
          Proving how many mats lie at once{other && ` in “${other.name}”`} …{' '}
          {state.step &&
            `at least ${state.step.mats.count}, at most ${state.step.mats.upperBound}${state.step.round > 0 ? `; round ${state.step.round} of at most ${state.step.rounds}` : '; looking over the floor'}.`}
        </p>
      )}
      {state.at === 'proving' && state.isOther && (
        <p className="aside" data-told>
          The plan has changed since the proof began. It goes on for how it was, and what it finds counts once the plan is like that again.
        </p>
      )}
      <div className="verbs">
        {/* One button in one place, so that focus stays on it. */}
        <Button onPress={isProving ? store.stop : store.prove}>
          {isProving ? 'Stop' : state.isCut ? 'Go on proving' : 'Prove how many mats'}
        </Button>
        {state.at === 'proving' && state.isOther && <TextLink onPress={store.prove}>Prove anew</TextLink>}
      </div>
    </section>
  );
}
