import { useState } from 'react';
import { asLeft } from '#model/findings/asLeft.ts';
import { useFrameDialogs } from '../frame/frameDialogs.ts';
import { useSession } from '../session/hooks.ts';
import { me } from '../session/me.ts';
import { Button } from '../ui/Button.tsx';
import { Field } from '../ui/Field.tsx';
import { TextLink } from '../ui/TextLink.tsx';

/** Leaving a finding as it is takes a reason: the next guide wants to know why. */
export function LeaveForm({ keys, onClose }: { keys: readonly string[]; onClose: () => void }) {
  const session = useSession();
  const [reason, setReason] = useState('');
  const dialogs = useFrameDialogs();
  const isNamed = (me().name || me().initials) !== '';
  const isReady = reason.trim() !== '';

  function leave() {
    if (!isReady) return;
    const { name, initials } = me();
    // What stands in the list once is left in one step.
    session.undo.beginStep();
    const findings = session.report()?.findings ?? [];
    for (const key of keys) {
      const finding = findings.find((each) => each.key === key);
      session.commands.leave(key, reason.trim(), name || initials, finding && asLeft(finding));
    }
    session.undo.endStep();
    session.setView({ finding: null });
    session.announce('Left as it is. It is at the end of this list, and open again if it becomes worse.');
    onClose();
  }

  return (
    <form
      className="leave-form"
      onSubmit={(event) => {
        event.preventDefault();
        leave();
      }}
    >
      <Field label="Why is it left as it is?">
        {(wiring) => (
          <textarea
            {...wiring}
            rows={2}
            maxLength={500}
            // biome-ignore lint/a11y/noAutofocus: the form opens on "Leave it" and asks just this
            autoFocus
            value={reason}
            onChange={(event) => setReason(event.target.value)}
          />
        )}
      </Field>
      {!isNamed && (
        <p className="aside">
          It will say "by somebody who gave no name". <TextLink onPress={() => dialogs.open('me')}>Say who you are</TextLink>
        </p>
      )}
      <div className="verbs">
        <Button kind="strong" type="submit" isDisabled={!isReady}>
          Leave it
        </Button>
        <TextLink onPress={onClose}>Keep it open</TextLink>
      </div>
    </form>
  );
}
