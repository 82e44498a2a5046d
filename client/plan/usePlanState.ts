import { useRef, useSyncExternalStore } from 'react';
import { useSession } from '../session/hooks.ts';
import { type PlanState, planStoreOf } from './planStore.ts';

/** Some of what the plan has in hand; draws again only when one of them changes, and not with every word of a drag. */
export function usePlanState<K extends keyof PlanState>(...parts: readonly K[]): Pick<PlanState, K> {
  const store = planStoreOf(useSession());
  const before = useRef<PlanState | null>(null);
  return useSyncExternalStore(store.subscribe, () => {
    const [was, now] = [before.current, store.state()];
    if (was && parts.every((part) => was[part] === now[part])) return was;
    before.current = now;
    return now;
  });
}
