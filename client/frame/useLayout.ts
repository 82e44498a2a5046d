import { useSyncExternalStore } from 'react';

/** wide: everything at once. tablet: drawing left, one list right. stacked: lists under the drawing. phone: one thing at a time. */
export type Layout = 'wide' | 'tablet' | 'stacked' | 'phone';

const wide = matchMedia('(min-width: 1280px)');
const tablet = matchMedia('(min-width: 900px)');
const stacked = matchMedia('(min-width: 600px)');
/** The title block is seen whole, with nothing scrolled (room.css). */
const whole = matchMedia('(min-width: 1280px) and (min-height: 760px)');

function read(): Layout {
  if (wide.matches) return 'wide';
  if (tablet.matches) return 'tablet';
  return stacked.matches ? 'stacked' : 'phone';
}

function subscribe(listener: () => void): () => void {
  const all = [wide, tablet, stacked, whole];
  for (const query of all) query.addEventListener('change', listener);
  return () => {
    for (const query of all) query.removeEventListener('change', listener);
  };
}

export const useLayout = (): Layout => useSyncExternalStore(subscribe, read);
export const useSeesTitleBlock = (): boolean => useSyncExternalStore(subscribe, () => whole.matches);
