import { type ReactNode, useMemo, useState } from 'react';
import { type FrameDialog, FrameDialogsContext } from './frameDialogs.ts';

/** Keeps which dialog of the frame is open. */
export function Dialogs({ children }: { children: ReactNode }) {
  const [shown, setShown] = useState<FrameDialog | null>(null);
  const dialogs = useMemo(() => ({ shown, open: setShown, close: () => setShown(null) }), [shown]);
  return <FrameDialogsContext value={dialogs}>{children}</FrameDialogsContext>;
}
