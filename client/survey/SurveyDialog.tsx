import { useCallback } from 'react';
import { planStoreOf } from '../plan/planStore.ts';
import { useClassroom, useSession, useUnits } from '../session/hooks.ts';
import type { LaidRoom } from './laidRoom.ts';
import { sayMisfits } from './saySurvey.ts';
import { WalkDialog } from './WalkDialog.tsx';
import { whatNoLongerFits, writeSurvey } from './writeSurvey.ts';

/** Measures the room of the opened classroom again. */
export function SurveyDialog({ onClose }: { onClose: () => void }) {
  const session = useSession();
  const classroom = useClassroom();
  const units = useUnits();
  const misfitsOf = useCallback((laid: LaidRoom) => whatNoLongerFits(classroom, session.arrangement().id, laid), [classroom, session]);

  function put(laid: LaidRoom, misfits: readonly string[]) {
    writeSurvey(session, laid);
    const store = planStoreOf(session);
    store.set({ wholeRoom: store.state().wholeRoom + 1 });
    session.announce(`The room stands as it was measured. Take back undoes it.${sayMisfits(misfits)}`);
    onClose();
  }

  return (
    <WalkDialog
      room={classroom.room}
      units={units}
      keptAs={session.id}
      isFresh={false}
      misfitsOf={misfitsOf}
      onPut={put}
      onClose={onClose}
    />
  );
}
