import type { Classroom } from '#model/schema/types.ts';
import { announcer } from '../session/announcer.ts';
import { openAsNew } from '../session/starts.ts';
import { WalkDialog } from './WalkDialog.tsx';

interface Props {
  /** A classroom to be, whose walls only hold their place: it is laid out when the walk is put on the sheet. */
  readonly classroom: Classroom;
  readonly onPut: () => void;
  /** Leaves the walk as it is, kept on this device. */
  readonly onClose: () => void;
}

const none = (): readonly string[] => [];

/** Measures a room that is not on a sheet yet. */
export function NewWalkDialog({ classroom, onPut, onClose }: Props) {
  return (
    <WalkDialog
      room={classroom.room}
      units={classroom.display.units}
      keptAs="new"
      isFresh
      misfitsOf={none}
      onPut={({ room }) => {
        onPut();
        openAsNew({ ...classroom, room });
        announcer.say('The room stands as it was measured.');
      }}
      onClose={onClose}
    />
  );
}
