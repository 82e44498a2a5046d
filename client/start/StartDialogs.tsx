import { lazy, Suspense } from 'react';
import { useFrameDialogs } from '../frame/frameDialogs.ts';

const NewClassroomDialog = lazy(() => import('./NewClassroomDialog.tsx').then((m) => ({ default: m.NewClassroomDialog })));
const OpenFileDialog = lazy(() => import('./OpenFileDialog.tsx').then((m) => ({ default: m.OpenFileDialog })));

/** New classroom and open a file: the same from the start page and from a sheet. */
export function StartDialogs() {
  const { shown, close } = useFrameDialogs();
  return (
    <Suspense fallback={null}>
      {shown === 'new' && <NewClassroomDialog onClose={close} />}
      {shown === 'open' && <OpenFileDialog onClose={close} />}
    </Suspense>
  );
}
