import { act, type ReactElement } from 'react';
import { createRoot } from 'react-dom/client';
import { SessionProvider } from '#client/session/SessionProvider.tsx';
import type { PlanSession } from './planSession.ts';

const analyst = {
  ask: () => {},
  knowMats: () => {},
  report: () => null,
  aside: () => ({ places: null }),
  trouble: () => null,
  isThinking: () => false,
  subscribe: () => () => {},
  close: () => {},
};

/** Shows a part of the page for a session whose checks say nothing. @returns takes it away again */
export function showPart(session: PlanSession, part: ReactElement): () => void {
  Object.assign(globalThis, { IS_REACT_ACT_ENVIRONMENT: true });
  const page = document.createElement('div');
  document.body.append(page);
  const root = createRoot(page);
  act(() => root.render(<SessionProvider opened={{ session, analyst }}>{part}</SessionProvider>));
  return () => {
    act(() => root.unmount());
    document.body.innerHTML = '';
  };
}
