import { useState } from 'react';
import type { Finding } from '#model/findings/finding.ts';
import { withAllInStep } from '../plan/lateParts.ts';
import { useSession } from '../session/hooks.ts';
import { MayChange } from '../session/MayChange.tsx';
import { Button } from '../ui/Button.tsx';
import { mendsOfOrder } from './mendsOfOrder.ts';

/** One press for all that the checks propose for the order, where that is more than one thing. */
export function AllInStep({ findings }: { readonly findings: readonly Finding[] }) {
  const session = useSession();
  const [done, setDone] = useState<number | null>(null);
  const mends = mendsOfOrder(findings).length;
  if (mends < 2 && done === null) return null;

  function put(): void {
    if (done !== null) return;
    setDone(0);
    void withAllInStep(session, ({ putAllInStep }) => putAllInStep(session, setDone)).finally(() => setDone(null));
  }

  return (
    <MayChange>
      <div className="verbs all-in-step">
        <Button onPress={put}>
          {done === null ? `Do all ${mends} that are proposed for the order` : `Putting in order … ${done} done`}
        </Button>
      </div>
    </MayChange>
  );
}
