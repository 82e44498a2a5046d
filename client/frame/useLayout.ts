import { useSyncExternalStore } from 'react';

/** wide: everything at once. tablet: drawing left, one list right. stacked: lists under the drawing. phone: one thing at a time. */
export type Layout = 'wide' | 'tablet' | 'stacked' | 'phone';

const wide = matchMedia('(min-width: 1280px)');
const tablet = matchMedia('(min-width: 900px)');
const stacked = matchMedia('(min-width: 600px)');

function read(): Layout {
  if (wide.matches) return 'wide';
  if (tablet.matches) return 'tablet';
  return stacked.matches ? 'stacked' : 'phone';
}

function subscribe(listener: () => void): () => void {
  const all = [wide, tablet, stacked];
  for (const query of all) query.addEventListener('change', listener);
  return () => {
    for (const query of all) query.removeEventListener('change', listener);
  };
}

export const useLayout = (): Layout => useSyncExternalStore(subscribe, read);
