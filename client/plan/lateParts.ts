import type { Session } from '#client/session/types.ts';
import { fetchWhenQuiet } from '#client/session/whenQuiet.ts';

// What is not needed to draw the room comes once the page is quiet, or when it is first wanted.
const loadTape = () => import('./layTape.ts');
const loadVerbs = () => import('./set/setVerbs.ts');
const loadOrder = () => import('../checks/allInStep.ts');
type SetDrags = typeof import('./drag/setDrags.ts');
let setDrags: SetDrags | null = null;
export const loadSetDrags = (): Promise<void> =>
  import('./drag/setDrags.ts').then((drags) => {
    setDrags = drags;
  });
type RestPart = typeof import('./draw/drawRest.ts');
let restPart: RestPart | null = null;
const loadRest = async (): Promise<void> => {
  restPart = await import('./draw/drawRest.ts');
};
fetchWhenQuiet(loadRest);
fetchWhenQuiet(loadSetDrags);
fetchWhenQuiet(loadVerbs);
fetchWhenQuiet(loadTape);
fetchWhenQuiet(loadOrder);

const notHere = (session: Session) => (): void =>
  session.announce('This part of the page is not on this device yet. Try again when the server is in reach.');

export const withTape = (session: Session, lay: (tape: typeof import('./layTape.ts')) => void): void =>
  void loadTape().then(lay, notHere(session));

export const withSetVerbs = (session: Session, run: (verbs: typeof import('./set/setVerbs.ts')) => void): void =>
  void loadVerbs().then(run, notHere(session));

export const withAllInStep = (session: Session, run: (order: typeof import('../checks/allInStep.ts')) => Promise<void>): Promise<void> =>
  loadOrder().then(run, notHere(session));

/** A drag cannot wait: null while it is not here yet. It comes with the verbs of several at the latest. */
export const setDragsHere = (): SetDrags | null => setDrags;

/** How the thing in hand lies is drawn once this is here; it is said when it is let go in any case. */
export const restPartHere = (): RestPart | null => restPart;
