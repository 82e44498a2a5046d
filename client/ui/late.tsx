import { type ComponentType, lazy, useEffect, useState } from 'react';

/** ms after which a part that is not here is asked for again: a server that comes back says nothing to a page */
const AGAIN = 5_000;
/** ms for which a part waits for styles that were lost */
const STYLES = 1_000;

/** Fetches the part; `here` once it has come, also when that was after the first time. */
interface Late<P> {
  readonly load: () => Promise<ComponentType<P>>;
  here: ComponentType<P> | null;
}

/**
 * A part of the page that is fetched when it is first wanted. With the server away it may not be on the device yet: then
 * it says so in its own place, the rest of the sheet stays, and it is asked for again by itself until it is here, or by a press.
 */
export function late<P extends object>(load: Late<P>['load']): ComponentType<P> {
  const asPart = (part: ComponentType<P>) => ({ default: part });
  const wanted: Late<P> = { load: () => lostStyles().then(load), here: null };
  const inItsPlace = (given: P) => <NotHere wanted={wanted} given={given} />;
  const part = lazy(() =>
    wanted.load().then(asPart, (error: unknown) => {
      console.warn(error);
      return asPart(inItsPlace);
    }),
  );
  // To whoever shows it a part that comes later is a part.
  return part as unknown as ComponentType<P>;
}

function NotHere<P extends object>({ wanted, given }: { readonly wanted: Late<P>; readonly given: P }) {
  const [Part, setPart] = useState<ComponentType<P> | null>(() => wanted.here);
  const isHere = Part !== null;
  useEffect(() => {
    if (isHere) return undefined;
    const ask = () => void askAgain(wanted, setPart);
    const timer = setInterval(ask, AGAIN);
    addEventListener('online', ask);
    return () => {
      clearInterval(timer);
      removeEventListener('online', ask);
    };
  }, [wanted, isHere]);
  if (Part) return <Part {...given} />;
  return (
    <p className="aside not-here" role="status">
      This part of the page is not on this device yet; it comes when the server is in reach.{' '}
      <button type="button" className="text-link" onClick={() => void askAgain(wanted, setPart)}>
        Try again
      </button>
    </p>
  );
}

/** Still not in reach: the words stand as they are. */
const askAgain = <P,>(wanted: Late<P>, setPart: (make: () => ComponentType<P>) => void): Promise<void> =>
  wanted.load().then(
    (found) => {
      wanted.here = found;
      setPart(() => found);
    },
    () => undefined,
  );

/** Style sheets of parts that could not be fetched. */
const lost = new Set<HTMLLinkElement>();
let coming: Promise<unknown> = Promise.resolve();

/** Asks again for style sheets that could not be fetched. The bundler's loader takes one that it asked for once for one that has come. */
export function fetchLostStyles(page: Document = document): void {
  page.addEventListener(
    'error',
    ({ target }) => {
      if (!(target instanceof HTMLLinkElement) || target.rel !== 'stylesheet') return;
      lost.add(target);
      setTimeout(lostStyles, AGAIN);
    },
    true,
  );
}

/** Done when what was lost is here or still cannot be fetched: what is on the device opens also with the server away. */
function lostStyles(): Promise<unknown> {
  if (lost.size > 0) coming = Promise.race([Promise.all([...lost].map(fetchAgain)), new Promise((done) => setTimeout(done, STYLES))]);
  return coming;
}

function fetchAgain(was: HTMLLinkElement): Promise<unknown> {
  lost.delete(was);
  const link = was.cloneNode() as HTMLLinkElement;
  was.replaceWith(link);
  return new Promise((done) => {
    link.addEventListener('load', done);
    link.addEventListener('error', done);
  });
}
