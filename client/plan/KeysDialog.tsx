import { useMayChange, useSession, useUnits } from '../session/hooks.ts';
import '../styles/keys.css';
import { Dialog } from '../ui/Dialog.tsx';
import { TextLink } from '../ui/TextLink.tsx';
import { Tick } from '../ui/Tick.tsx';
import { keyList } from './keyList.ts';
import { planStoreOf } from './planStore.ts';
import { usePlanState } from './usePlanState.ts';

/** Which keys do what, and the switch for those that are single letters. */
export function KeysDialog({ onClose }: { readonly onClose: () => void }) {
  const store = planStoreOf(useSession());
  const { hasLetterKeys } = usePlanState('hasLetterKeys');
  const groups = keyList(useUnits(), useMayChange());
  return (
    <Dialog title="Keys" isOpen onClose={onClose} isWide>
      <Tick isTicked={hasLetterKeys} onChange={(isOn) => store.set({ hasLetterKeys: isOn })}>
        Letter keys work while the drawing has the focus. Kept on this device.
      </Tick>
      <div className="keys">
        {groups.map(({ title, keys }) => (
          <section key={title} aria-label={title}>
            <h3>{title}</h3>
            <dl>
              {keys.map(({ key, does }) => (
                <div key={key}>
                  <dt>
                    <kbd>{key}</kbd>
                  </dt>
                  <dd>{does}</dd>
                </div>
              ))}
            </dl>
          </section>
        ))}
      </div>
      <div className="verbs">
        <TextLink onPress={onClose}>Close</TextLink>
      </div>
    </Dialog>
  );
}
