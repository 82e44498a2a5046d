import { type ReactNode, useEffect, useRef, useState } from 'react';
import { fetchWhenQuiet } from '../session/whenQuiet.ts';

/** px below what is seen at which a part is fetched, so that it is there when it is scrolled to */
const NEAR = 400;

/** What stands far below what is seen at first: it comes when it is nearly seen, or once the page is quiet. */
export function WhenNear({ children }: { readonly children: ReactNode }) {
  const [isWanted, setWanted] = useState(false);
  const place = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (!place.current) return;
    const watch = new IntersectionObserver(([entry]) => entry?.isIntersecting && setWanted(true), { rootMargin: `0px 0px ${NEAR}px` });
    watch.observe(place.current);
    fetchWhenQuiet(async () => setWanted(true));
    return () => watch.disconnect();
  }, []);
  return isWanted ? children : <div ref={place} />;
}
