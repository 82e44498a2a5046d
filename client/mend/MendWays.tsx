import { Suspense, useSyncExternalStore } from 'react';
import { useScene, useSession } from '../session/hooks.ts';
import '../styles/mend.css';
import { fetchWhenQuiet } from '../session/whenQuiet.ts';
import { Button } from '../ui/Button.tsx';
import { late } from '../ui/late.tsx';
import { mendStoreOf } from './mendStore.ts';
import { sayHowFar, sayWhat } from './sayProgress.ts';

const loadTold = () => import('./Told.tsx');
fetchWhenQuiet(loadTold);
const Told = late(() => loadTold().then((m) => m.Told));
const Kept = late(() => loadTold().then((m) => m.Kept));
const OnlyLink = late(() => loadTold().then((m) => m.OnlyLink));

/** Looks for the smallest move that widens every way, shows it in pencil and in words, and does it when told to. */
export function MendWays({ isAsked }: { readonly isAsked: boolean }) {
  const store = mendStoreOf(useSession());
  const state = useSyncExternalStore(store.subscribe, store.state);
  const kept = useSyncExternalStore(store.subscribe, store.kept);
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
      {kept.length > 0 && (
        <Suspense>
          <Kept store={store} kept={kept} />
        </Suspense>
      )}
    </section>
  );
}
