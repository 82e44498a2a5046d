import { type ReactNode, useMemo, useState } from 'react';
import { type FrameDialog, FrameDialogsContext } from './frameDialogs.ts';

/** Keeps which dialog of the frame is open, or the page of which check. */
export function Dialogs({ children }: { children: ReactNode }) {
  const [shown, setShown] = useState<FrameDialog | null>(null);
  const [page, openPage] = useState<string | null>(null);
  const dialogs = useMemo(() => {
    const close = () => {
      setShown(null);
      openPage(null);
    };
    return { shown, open: setShown, page, openPage, close };
  }, [shown, page]);
  return <FrameDialogsContext value={dialogs}>{children}</FrameDialogsContext>;
}
