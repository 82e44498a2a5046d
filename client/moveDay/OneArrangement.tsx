import { Suspense, useState } from 'react';
import { useArrangement, useSession } from '../session/hooks.ts';
import { MayChange } from '../session/MayChange.tsx';
import { Button } from '../ui/Button.tsx';
import { late } from '../ui/late.tsx';

const NameDialog = late(() => import('../frame/NameDialog.tsx').then((m) => m.NameDialog));

/** There is nothing to move to yet: how to make a second arrangement. */
export function OneArrangement() {
  const session = useSession();
  const arrangement = useArrangement();
  const [isAsking, setAsking] = useState(false);

  function propose(name: string): void {
    const id = session.commands.addArrangement(name, arrangement.id);
    session.setView({ sheet: 'room', arrangement: id, chosen: null, finding: null, preview: null });
    session.announce(
      `"${name}" is a copy of "${arrangement.name || 'the arrangement without a name'}". Move things in it; the move day follows.`,
    );
  }

  return (
    <div className="move-empty">
      <h2>There is one arrangement only</h2>
      <p>
        The move day shows how to get from how the room stands to how it is to stand. Copy this arrangement, move things in the copy on the
        Room sheet, and come back: the order of the day is worked out from the difference.
      </p>
      <MayChange>
        <div className="verbs">
          <Button kind="strong" onPress={() => setAsking(true)}>
            Copy this arrangement …
          </Button>
        </div>
      </MayChange>
      {isAsking && (
        <Suspense fallback={null}>
          <NameDialog title="Propose another arrangement" value="" verb="Propose it" onName={propose} onClose={() => setAsking(false)} />
        </Suspense>
      )}
    </div>
  );
}
