import { useSyncExternalStore } from 'react';
import { useSession } from '../session/hooks.ts';
import { type PlanState, planStoreOf } from './planStore.ts';

/** The tool in hand and what is being drawn; draws again when it changes. */
export function usePlanState(): PlanState {
  const store = planStoreOf(useSession());
  return useSyncExternalStore(store.subscribe, store.state);
}
