import { useFrameDialogs } from '../frame/frameDialogs.ts';
import { NewClassroomDialog } from './NewClassroomDialog.tsx';
import { OpenFileDialog } from './OpenFileDialog.tsx';

/** New classroom and open a file: the same from the start page and from a sheet. */
export function StartDialogs() {
  const { shown, close } = useFrameDialogs();
  if (shown === 'new') return <NewClassroomDialog onClose={close} />;
  if (shown === 'open') return <OpenFileDialog onClose={close} />;
  return null;
}
