import type { ReactNode } from 'react';
import { useMayChange } from './hooks.ts';

/** What would change the classroom: absent for who may only look. */
export function MayChange({ children }: { children: ReactNode }) {
  return useMayChange() ? children : null;
}
