import { useSyncExternalStore } from 'react';
import type { Mend, MendOnly } from '#model/analysis/mendWays/mendWays.ts';
import { sayMend, sayMove } from '#model/analysis/mendWays/sayMend.ts';
import { useScene, useSession } from '../session/hooks.ts';
import { MayChange } from '../session/MayChange.tsx';
import '../styles/mend.css';
import { Button } from '../ui/Button.tsx';
import { TextLink } from '../ui/TextLink.tsx';
import { type MendStore, mendStoreOf } from './mendStore.ts';
import { sayHowFar, sayWhat } from './sayProgress.ts';

/** Looks for the smallest move that widens every way, shows it in pencil and in words, and does it when told to. */
export function MendWays({ isAsked }: { readonly isAsked: boolean }) {
  const store = mendStoreOf(useSession());
  const state = useSyncExternalStore(store.subscribe, store.state);
  const scene = useScene();
  if (!isAsked && state.at === 'rest' && state.word === null) return null;
  const isLooking = state.at === 'looking';
  return (
    <section className="mend" aria-label="A mend of the ways">
      {state.at === 'rest' && state.word !== null && (
        <p className="aside" data-told>
          {state.word}
        </p>
      )}
      {isLooking && (
        <p className="aside" data-testid="mend-progress">
          Looking for the smallest move that widens {sayWhat(scene, state.only, state.progress)} … {sayHowFar(scene, state.progress)}
        </p>
      )}
      {state.at === 'told' && <Told {...state} store={store} />}
      <div className="verbs">
        {(isAsked || isLooking) && state.at !== 'told' && (
          // One button in one place, so that focus stays on it.
          <Button onPress={isLooking ? store.stop : () => store.look()}>
            {isLooking ? 'Stop' : 'Look for a move that widens every way'}
          </Button>
        )}
        {isAsked && state.at === 'rest' && state.only !== null && <Only store={store} only={state.only} />}
      </div>
      <Kept store={store} />
    </section>
  );
}

/** A search for less than every way as wide as is asked. */
function Only({ store, only }: { readonly store: MendStore; readonly only: MendOnly }) {
  const text = only === 'must' ? 'Only as wide as it must be' : 'Only widen the narrowest place';
  return <TextLink onPress={() => store.look(only)}>{text}</TextLink>;
}

interface ToldProps {
  readonly mend: Mend;
  readonly only: MendOnly | null;
  readonly isStopped: boolean;
  readonly store: MendStore;
}

function Told({ mend, only, isStopped, store }: ToldProps) {
  const scene = useScene();
  const { access } = scene.classroom;
  const isLess = mend.end !== 'found' && mend.end !== 'fine' && mend.end !== 'cannot-tell';
  const mustBeLess = !access.required && !access.wheelchair && access.leastWidth < access.routeWidth;
  return (
    <>
      {/* Read next where focus was on the button that is gone (keepFocus). */}
      <p tabIndex={-1} className="mend-words" data-told>
        {sayMend(scene, mend)}
        {isStopped && ' The search was stopped: a smaller change may exist.'}
      </p>
      {mend.end === 'found' && (
        <ol className="mend-moves">
          {mend.moves.map((move) => (
            <li key={move.piece}>
              <span>{sayMove(scene, move)}</span>
              <TextLink aria-label={`Not this piece: ${move.label}`} onPress={() => store.keep(move.piece)}>
                Not this piece
              </TextLink>
            </li>
          ))}
        </ol>
      )}
      <div className="verbs">
        {mend.end === 'found' && (
          <MayChange>
            <Button kind="strong" onPress={store.doIt}>
              Do it
            </Button>
          </MayChange>
        )}
        <TextLink onPress={store.leaveIt}>{mend.end === 'found' ? 'Leave it' : 'Close'}</TextLink>
        {mend.end !== 'found' && <TextLink onPress={() => store.look()}>Look again</TextLink>}
        {isLess && mustBeLess && only === null && <Only store={store} only="must" />}
        {isLess && <Only store={store} only="narrowest" />}
      </div>
    </>
  );
}

/** Pieces that the search leaves where they are. */
function Kept({ store }: { readonly store: MendStore }) {
  const scene = useScene();
  const kept = useSyncExternalStore(store.subscribe, store.kept);
  const there = kept.flatMap((id) => scene.bodyById.get(id) ?? []);
  if (there.length === 0) return null;
  return (
    <p className="aside mend-kept">
      Stays where it is in the search:{' '}
      {there.map((body) => (
        <span key={body.id}>
          {body.label}{' '}
          <TextLink aria-label={`Let ${body.label} move again`} onPress={() => store.release(body.id)}>
            let it move
          </TextLink>{' '}
        </span>
      ))}
    </p>
  );
}
