import { Suspense, useSyncExternalStore } from 'react';
import { useScene, useSession } from '../session/hooks.ts';
import '../styles/mend.css';
import { fetchWhenQuiet } from '../session/whenQuiet.ts';
import { Button } from '../ui/Button.tsx';
import { late } from '../ui/late.tsx';
import { TextLink } from '../ui/TextLink.tsx';
import { type MendStore, mendStoreOf } from './mendStore.ts';
import { sayHowFar, sayWhat } from './sayProgress.ts';

const loadTold = () => import('./Told.tsx');
fetchWhenQuiet(loadTold);
const Told = late(() => loadTold().then((m) => m.Told));
const OnlyLink = late(() => loadTold().then((m) => m.OnlyLink));

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
      {state.at === 'told' && (
        // Focus that the button had goes on to it, and on from there to what takes its place (keepFocus).
        <Suspense
          fallback={
            <p tabIndex={-1} className="mend-words" data-told>
              One moment …
            </p>
          }
        >
          <Told {...state} store={store} />
        </Suspense>
      )}
      <div className="verbs">
        {(isAsked || isLooking) && state.at !== 'told' && (
          // One button in one place, so that focus stays on it.
          <Button onPress={isLooking ? store.stop : () => store.look()}>
            {isLooking ? 'Stop' : 'Look for a move that widens every way'}
          </Button>
        )}
        {isAsked && state.at === 'rest' && state.only !== null && (
          <Suspense>
            <OnlyLink store={store} only={state.only} />
          </Suspense>
        )}
      </div>
      <Kept store={store} />
    </section>
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
