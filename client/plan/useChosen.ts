import { useSyncExternalStore } from 'react';
import { useSession } from '../session/hooks.ts';
import type { Chosen } from '../session/types.ts';

/** What is chosen. Unlike the whole view it does not change with each frame of a drag. */
export function useChosen(): Chosen | null {
  const session = useSession();
  return useSyncExternalStore(session.subscribe, () => session.view().chosen);
}
