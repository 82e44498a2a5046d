import { createContext, useContext } from 'react';

export type FrameDialog = 'class' | 'me' | 'share' | 'new' | 'open';
export interface FrameDialogs {
  readonly shown: FrameDialog | null;
  open(dialog: FrameDialog): void;
  close(): void;
}

export const FrameDialogsContext = createContext<FrameDialogs>({ shown: null, open: () => undefined, close: () => undefined });
export const useFrameDialogs = (): FrameDialogs => useContext(FrameDialogsContext);
