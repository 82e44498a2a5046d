import { useState } from 'react';
import { Button } from '../ui/Button.tsx';
import { Dialog } from '../ui/Dialog.tsx';
import { forgetHere, type KeptRoom } from './keptHere.ts';

interface Props {
  readonly room: KeptRoom;
  readonly name: string;
  readonly onClose: () => void;
  readonly onForgotten: () => void;
}

/** Asks first: what is on no other device or server cannot be brought back. */
export function ForgetDialog({ room, name, onClose, onForgotten }: Props) {
  const [trouble, setTrouble] = useState('');

  function forget() {
    forgetHere(room.id).then(onForgotten, (error: unknown) =>
      setTrouble(`It could not be forgotten and is still here: ${error instanceof Error ? error.message : String(error)}`),
    );
  }

  return (
    <Dialog title={`Forget ${name} on this device?`} isOpen onClose={onClose}>
      <p>
        It is taken off this device. What is not saved elsewhere, on a server, on a colleague’s device or in a file, is lost and cannot be
        brought back.
      </p>
      <p>What a server has stays there and opens again by its address.</p>
      {trouble !== '' && (
        <p role="alert" className="trouble-text">
          {trouble}
        </p>
      )}
      <div className="verbs">
        <Button kind="strong" onPress={onClose}>
          Keep it
        </Button>
        <Button kind="quiet" onPress={forget}>
          Forget it
        </Button>
      </div>
    </Dialog>
  );
}
