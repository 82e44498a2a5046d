import { useState } from 'react';
import { initialsOf } from '#model/document/presence.ts';
import { useSession } from '../session/hooks.ts';
import { keepMe, readMe } from '../session/me.ts';
import { Button } from '../ui/Button.tsx';
import { Dialog } from '../ui/Dialog.tsx';
import { Field } from '../ui/Field.tsx';
import { TextLink } from '../ui/TextLink.tsx';

/** Who is here, kept on the device and changeable. Colleagues see the initials round what you hold. */
export function MeDialog({ onClose }: { onClose: () => void }) {
  const session = useSession();
  const known = readMe();
  const [name, setName] = useState(known?.name ?? '');
  const [initials, setInitials] = useState<string | null>(known?.initials ?? null);
  const shownInitials = initials ?? initialsOf(name);

  function keep() {
    const me = { name: name.trim(), initials: shownInitials.trim().slice(0, 3) };
    keepMe(me);
    session.setPerson(me);
    onClose();
  }

  return (
    <Dialog title="Who are you?" isOpen onClose={onClose}>
      <form
        className="form"
        onSubmit={(event) => {
          event.preventDefault();
          keep();
        }}
      >
        <p>Colleagues at the same sheet see your initials round what you hold. Kept on this device only.</p>
        <div className="form-row">
          <Field label="Name">
            {(wiring) => (
              <input
                {...wiring}
                autoFocus
                maxLength={60}
                autoComplete="name"
                value={name}
                onChange={(event) => setName(event.target.value)}
              />
            )}
          </Field>
          <Field label="Initials">
            {(wiring) => (
              <input
                {...wiring}
                maxLength={3}
                autoComplete="off"
                value={shownInitials}
                onChange={(event) => setInitials(event.target.value.toUpperCase())}
              />
            )}
          </Field>
        </div>
        <div className="verbs">
          <Button kind="strong" type="submit" isDisabled={shownInitials.trim() === ''}>
            That is me
          </Button>
          <TextLink onPress={onClose}>Leave it</TextLink>
        </div>
      </form>
    </Dialog>
  );
}
