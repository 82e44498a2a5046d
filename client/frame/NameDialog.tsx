import { useState } from 'react';
import { Button } from '../ui/Button.tsx';
import { Dialog } from '../ui/Dialog.tsx';
import { Field } from '../ui/Field.tsx';
import { TextLink } from '../ui/TextLink.tsx';
import { MOST_NAME, sayFull } from './nameLength.ts';

interface Props {
  readonly title: string;
  readonly value: string;
  readonly verb: string;
  readonly onName: (name: string) => void;
  readonly onClose: () => void;
}

/** Asks for one name. */
export function NameDialog({ title, value, verb, onName, onClose }: Props) {
  const [name, setName] = useState(value);
  const isReady = name.trim() !== '';
  return (
    <Dialog title={title} isOpen onClose={onClose}>
      <form
        className="form"
        onSubmit={(event) => {
          event.preventDefault();
          if (isReady) onName(name.trim());
        }}
      >
        <Field label="Name" echo={sayFull(name)}>
          {(wiring) => <input {...wiring} autoFocus maxLength={MOST_NAME} value={name} onChange={(event) => setName(event.target.value)} />}
        </Field>
        <div className="verbs">
          <Button kind="strong" type="submit" isDisabled={!isReady}>
            {verb}
          </Button>
          <TextLink onPress={onClose}>Leave it</TextLink>
        </div>
      </form>
    </Dialog>
  );
}
