import { useCanDoAgain, useCanTakeBack, useMayChange, useSession } from '../session/hooks.ts';
import { MayChange } from '../session/MayChange.tsx';
import { openDemoRoom } from '../start/openDemoRoom.ts';
import { TextLink } from '../ui/TextLink.tsx';
import { VerbMenu } from '../ui/VerbMenu.tsx';
import { useFrameDialogs } from './frameDialogs.ts';
import { saveFile } from './saveFile.ts';
import { doAgain, NOTHING_BACK, takeBack } from './takeBack.ts';
import { useLayout } from './useLayout.ts';

const TAKES_BACK = 'Takes back your own last step';

/** Take back, do again, the file verbs, the address and the print, at the right of the top edge. */
export function EdgeTools() {
  const session = useSession();
  const dialogs = useFrameDialogs();
  const isWide = useLayout() === 'wide';
  const mayChange = useMayChange();
  const canTakeBack = useCanTakeBack();
  const canDoAgain = useCanDoAgain();
  return (
    <>
      <span className="divide" aria-hidden="true" />
      <MayChange>
        {/* Not switched off: a finger, which never rests on it, is told why when it presses. */}
        <TextLink ink aria-disabled={!canTakeBack} title={canTakeBack ? TAKES_BACK : NOTHING_BACK} onPress={() => takeBack(session)}>
          Take back
        </TextLink>
        <TextLink ink aria-disabled={!canDoAgain} onPress={() => doAgain(session)}>
          Do again
        </TextLink>
      </MayChange>
      <VerbMenu
        label="File"
        items={[
          ...(isWide ? [] : [{ id: 'share', text: 'Share this classroom', run: () => dialogs.open('share') }]),
          { id: 'class', text: 'The class: children, adults, rules', run: () => dialogs.open('class') },
          ...(mayChange ? [{ id: 'survey', text: 'Measure the room', run: () => dialogs.open('survey') }] : []),
          { id: 'new', text: 'New classroom', run: () => dialogs.open('new') },
          { id: 'open', text: 'Open a file', run: () => dialogs.open('open') },
          { id: 'save', text: 'Save a file', run: () => saveFile(session) },
          ...(isWide ? [] : [{ id: 'print', text: 'Print', run: () => dialogs.open('print') }]),
          { id: 'demo', text: 'Demo room', run: () => void openDemoRoom() },
          { id: 'keys', text: 'Keys', run: () => dialogs.open('keys') },
          { id: 'me', text: 'Your name', run: () => dialogs.open('me') },
          { id: 'start', text: 'To the start', run: () => location.assign('#') },
        ]}
      />
      {isWide && (
        <TextLink ink onPress={() => dialogs.open('share')}>
          Share this classroom
        </TextLink>
      )}
      {isWide && (
        <TextLink ink onPress={() => dialogs.open('print')}>
          Print
        </TextLink>
      )}
    </>
  );
}
