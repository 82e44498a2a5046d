import { type ComponentType, lazy, useEffect, useState } from 'react';

type Load<P> = () => Promise<ComponentType<P>>;

/**
 * A part of the page that is fetched when it is first wanted. With the server away it may not be on the device yet: then
 * it says so in its own place, the rest of the sheet stays, and it is asked for again by a press or when the network is back.
 */
export function late<P extends object>(load: Load<P>): ComponentType<P> {
  const asPart = (part: ComponentType<P>) => ({ default: part });
  const inItsPlace = (given: P) => <NotHere load={load} given={given} />;
  const part = lazy(() =>
    load().then(asPart, (error: unknown) => {
      console.warn(error);
      return asPart(inItsPlace);
    }),
  );
  // To whoever shows it a part that comes later is a part.
  return part as unknown as ComponentType<P>;
}

function NotHere<P extends object>({ load, given }: { readonly load: Load<P>; readonly given: P }) {
  const [Part, setPart] = useState<ComponentType<P> | null>(null);
  useEffect(() => {
    const ask = () => void askAgain(load, setPart);
    addEventListener('online', ask);
    return () => removeEventListener('online', ask);
  }, [load]);
  if (Part) return <Part {...given} />;
  return (
    <p className="aside not-here" role="status">
      This part of the page is not on this device yet; it comes when the server is in reach.{' '}
      <button type="button" className="text-link" onClick={() => void askAgain(load, setPart)}>
        Try again
      </button>
    </p>
  );
}

/** Still not in reach: the words stand as they are. */
const askAgain = <P,>(load: Load<P>, setPart: (make: () => ComponentType<P>) => void): Promise<void> =>
  load().then(
    (found) => setPart(() => found),
    () => undefined,
  );
