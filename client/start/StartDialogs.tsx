import { Suspense } from 'react';
import { useFrameDialogs } from '../frame/frameDialogs.ts';
import { late } from '../ui/late.tsx';

const NewClassroomDialog = late(() => import('./NewClassroomDialog.tsx').then((m) => m.NewClassroomDialog));
const OpenFileDialog = late(() => import('./OpenFileDialog.tsx').then((m) => m.OpenFileDialog));

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
