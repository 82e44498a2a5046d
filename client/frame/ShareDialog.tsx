import { useState } from 'react';
import { addressOf, isThisDeviceOnly } from '../session/address.ts';
import { useKept, useSession } from '../session/hooks.ts';
import { Button } from '../ui/Button.tsx';
import { Dialog } from '../ui/Dialog.tsx';
import { Field } from '../ui/Field.tsx';
import { TextLink } from '../ui/TextLink.tsx';

/** The address to give to colleagues, and what giving it means. */
export function ShareDialog({ onClose }: { onClose: () => void }) {
  const session = useSession();
  const kept = useKept();
  const address = addressOf(session.id, location.href);
  const [said, setSaid] = useState<string | null>(null);

  function copy() {
    if (!navigator.clipboard) return setSaid('This browser does not copy. Mark the address and copy it.');
    navigator.clipboard.writeText(address).then(
      () => setSaid('Copied.'),
      () => setSaid('This browser did not copy. Mark the address and copy it.'),
    );
  }

  return (
    <Dialog title="Share this address" isOpen onClose={onClose}>
      <Field label="Address of this classroom" echo={said}>
        {(wiring) => <input {...wiring} readOnly value={address} onFocus={(event) => event.target.select()} />}
      </Field>
      {isThisDeviceOnly(address) && (
        <p className="trouble-text">
          This address opens on this computer only. To let tablets in the same network in, start Lowshelf on this computer with{' '}
          <code>HOST=0.0.0.0 npm start</code>. It prints an address for tablets: share that one, followed by what stands here from{' '}
          <code>#room=</code> on.
        </p>
      )}
      <p>Whoever has the address can see and change this classroom. There is no other lock on it, so give it only to the team.</p>
      {(kept.server === 'offline' || kept.server === 'alone' || kept.server === 'refused') && (
        <p className="trouble-text">
          The server is not within reach now: the classroom is kept on this device and will be shared when it is back. To hand it over
          without a network, save a file.
        </p>
      )}
      <div className="verbs">
        <Button kind="strong" onPress={copy}>
          Copy the address
        </Button>
        <TextLink onPress={onClose}>Close</TextLink>
      </div>
    </Dialog>
  );
}
