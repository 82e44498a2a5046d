import { useState } from 'react';
import { viewIdOf } from '#model/document/viewId.ts';
import { addressOf, isThisDeviceOnly } from '../session/address.ts';
import { useKept, useMayChange, useSession } from '../session/hooks.ts';
import { Button } from '../ui/Button.tsx';
import { Dialog } from '../ui/Dialog.tsx';
import { Field } from '../ui/Field.tsx';
import { TextLink } from '../ui/TextLink.tsx';

/** The addresses to give to colleagues, and what giving each means. */
export function ShareDialog({ onClose }: { onClose: () => void }) {
  const session = useSession();
  const kept = useKept();
  const mayChange = useMayChange();
  const toChange = addressOf(session.id, location.href);
  // Who may only look has no other address to give than the one the page came by.
  const toLook = mayChange ? addressOf(viewIdOf(session.id), location.href, 'look') : addressOf(session.id, location.href, 'look');
  return (
    <Dialog title="Share this classroom" isOpen onClose={onClose}>
      {mayChange && (
        <Address label="To change" address={toChange}>
          Whoever has this address can see and change this classroom. There is no other lock on it, so give it only to the team.
        </Address>
      )}
      <Address label="To look" address={toLook}>
        Whoever has this one sees all four sheets and the checks, prints, and leaves remarks, but changes nothing. The address to change
        cannot be found from it.
      </Address>
      {isThisDeviceOnly(toLook) && (
        <p className="trouble-text">
          These addresses open on this computer only. To let tablets in the same network in, start Lowshelf on this computer with{' '}
          <code>HOST=0.0.0.0 npm start</code>. It prints an address for tablets: share that one, followed by what stands here from{' '}
          <code>#</code> on.
        </p>
      )}
      {(kept.server === 'offline' || kept.server === 'alone' || kept.server === 'refused') && (
        <p className="trouble-text">
          The server is not within reach now: the classroom is kept on this device and will be shared when it is back; until then the
          addresses open nothing new. To hand it over without a network, save a file.
        </p>
      )}
      <div className="verbs">
        <TextLink onPress={onClose}>Close</TextLink>
      </div>
    </Dialog>
  );
}

function Address({ label, address, children }: { label: string; address: string; children: string | string[] }) {
  const [said, setSaid] = useState<string | null>(null);
  function copy() {
    if (!navigator.clipboard) return setSaid('This browser does not copy. Mark the address and copy it.');
    navigator.clipboard.writeText(address).then(
      () => setSaid('Copied.'),
      () => setSaid('This browser did not copy. Mark the address and copy it.'),
    );
  }
  return (
    <div className="share-address">
      <Field label={label} echo={said}>
        {(wiring) => <input {...wiring} readOnly value={address} onFocus={(event) => event.target.select()} />}
      </Field>
      <Button onPress={copy} aria-label={`Copy the address ${label === 'To look' ? 'to look' : 'to change'}`}>
        Copy
      </Button>
      <p className="aside">{children}</p>
    </div>
  );
}
