import { lazy, Suspense } from 'react';
import { StartDialogs } from '../start/StartDialogs.tsx';
import { useFrameDialogs } from './frameDialogs.ts';
import { MeDialog } from './MeDialog.tsx';
import { ShareDialog } from './ShareDialog.tsx';

const ClassDialog = lazy(() => import('../settings/ClassDialog.tsx').then((m) => ({ default: m.ClassDialog })));

/** The dialogs that the frame of an opened classroom can show. */
export function FrameDialogSet() {
  const { shown, close } = useFrameDialogs();
  return (
    <>
      {shown === 'class' && (
        <Suspense fallback={null}>
          <ClassDialog onClose={close} />
        </Suspense>
      )}
      {shown === 'share' && <ShareDialog onClose={close} />}
      <MeDialog isAsked={shown === 'me'} onClose={close} />
      <StartDialogs />
    </>
  );
}
