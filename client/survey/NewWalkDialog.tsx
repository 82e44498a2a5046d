import { useCallback } from 'react';
import type { Classroom } from '#model/schema/types.ts';
import { announcer } from '../session/announcer.ts';
import { openAsNew } from '../session/starts.ts';
import type { LaidRoom } from './laidRoom.ts';
import { sayMisfits } from './saySurvey.ts';
import { WalkDialog } from './WalkDialog.tsx';
import { whatNoLongerFits } from './writeSurvey.ts';

interface Props {
  /** A classroom to be, whose walls only hold their place: it is laid out when the walk is put on the sheet. */
  readonly classroom: Classroom;
  readonly onPut: () => void;
  /** Leaves the walk as it is, kept on this device. */
  readonly onClose: () => void;
}

/** Measures a room that is not on a sheet yet. */
export function NewWalkDialog({ classroom, onPut, onClose }: Props) {
  const misfitsOf = useCallback((laid: LaidRoom) => whatNoLongerFits(classroom, classroom.current ?? '', laid), [classroom]);
  return (
    <WalkDialog
      room={classroom.room}
      units={classroom.display.units}
      keptAs="new"
      isFresh
      misfitsOf={misfitsOf}
      onPut={({ room }, misfits) => {
        onPut();
        openAsNew({ ...classroom, room });
        announcer.say(`The room stands as it was measured.${sayMisfits(misfits)}`);
      }}
      onClose={onClose}
    />
  );
}
