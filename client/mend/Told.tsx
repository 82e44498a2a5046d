import { useEffect } from 'react';
import type { Mend, MendOnly } from '#model/analysis/mendWays/mendWays.ts';
import { sayMend, sayMove } from '#model/analysis/mendWays/sayMend.ts';
import { proposalPart } from '../plan/draw/drawPencil.ts';
import { drawProposal } from '../plan/draw/drawProposal.ts';
import { planStoreOf } from '../plan/planStore.ts';
import { useScene, useSession } from '../session/hooks.ts';
import { MayChange } from '../session/MayChange.tsx';
import { Button } from '../ui/Button.tsx';
import { TextLink } from '../ui/TextLink.tsx';
import type { MendStore } from './mendStore.ts';
import { OnlyLink } from './OnlyLink.tsx';

// Drawn and told by the same part of the page.
proposalPart.draw = drawProposal;

export { Kept } from './Kept.tsx';
export { OnlyLink };

interface ToldProps {
  readonly mend: Mend;
  readonly only: MendOnly | null;
  readonly isStopped: boolean;
  readonly store: MendStore;
}

/** What came of the search, in words, and what may be done with it. */
export function Told({ mend, only, isStopped, store }: ToldProps) {
  const scene = useScene();
  const plan = planStoreOf(useSession());
  // The drawing may have been told of it before this part was here.
  useEffect(() => plan.set({}), [plan]);
  const isLess = mend.end !== 'found' && mend.end !== 'fine' && mend.end !== 'cannot-tell';
  return (
    <>
      {/* Read next where focus was on the button that is gone (keepFocus). */}
      <p tabIndex={-1} className="mend-words" data-told>
        {sayMend(scene, mend)}
        {isStopped && ' The search was stopped: a smaller change may exist.'}
      </p>
      {mend.end === 'found' && (
        <ol className="mend-moves">
          {mend.moves.map((move) => (
            <li key={move.piece}>
              <span>{sayMove(scene, move)}</span>
              <TextLink aria-label={`Not this piece: ${move.label}`} onPress={() => store.keep(move.piece)}>
                Not this piece
              </TextLink>
            </li>
          ))}
        </ol>
      )}
      <div className="verbs">
        {mend.end === 'found' && (
          <MayChange>
            <Button kind="strong" onPress={store.doIt}>
              Do it
            </Button>
          </MayChange>
        )}
        <TextLink onPress={store.leaveIt}>{mend.end === 'found' ? 'Leave it' : 'Close'}</TextLink>
        {mend.end !== 'found' && <TextLink onPress={() => store.look()}>Look again</TextLink>}
        {isLess && only === null && <OnlyLink store={store} only="must" />}
        {isLess && <OnlyLink store={store} only="narrowest" />}
      </div>
    </>
  );
}
