import { useSyncExternalStore } from 'react';
import { proofStoreOf } from '../mats/proofStore.ts';
import { useAnalyst, useArrangement, useReportOf, useSession } from '../session/hooks.ts';
import { sayMats } from './sayMats.ts';

/** How many mats fit, as surely as it is known; while it is being proven, as far as the proof is. */
export function MatWords() {
  const store = proofStoreOf(useSession(), useAnalyst());
  const proof = useSyncExternalStore(store.subscribe, store.state);
  const { id } = useArrangement();
  const isOfThis = proof.at === 'proving' && proof.arrangement === id && !proof.isOther;
  const found = isOfThis ? (proof.step?.mats ?? null) : null;
  const words = useReportOf((report) => sayMats(report, found));
  return words === null ? null : (
    <p className="aside" data-told>
      {words}
    </p>
  );
}
