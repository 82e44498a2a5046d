import { createContext, useContext } from 'react';

export type FrameDialog = 'class' | 'survey' | 'me' | 'share' | 'print' | 'keys' | 'new' | 'open';
export interface FrameDialogs {
  readonly shown: FrameDialog | null;
  open(dialog: FrameDialog): void;
  /** The check whose page is open ("way/width"); null: none. */
  readonly page: string | null;
  openPage(rule: string): void;
  close(): void;
}

export const FrameDialogsContext = createContext<FrameDialogs>({
  shown: null,
  open: () => undefined,
  page: null,
  openPage: () => undefined,
  close: () => undefined,
});
export const useFrameDialogs = (): FrameDialogs => useContext(FrameDialogsContext);
