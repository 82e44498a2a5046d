import { useEffect, useRef, useState } from 'react';
import { announcer } from '../session/announcer.ts';
import { me } from '../session/me.ts';
import { openSession } from '../session/openSession.ts';
import { type OpenedClassroom, SessionProvider } from '../session/SessionProvider.tsx';
import { forgetStart, startOf } from '../session/starts.ts';
import type { Session } from '../session/types.ts';
import { createAnalyst } from '../worker/createAnalyst.ts';
import { fetchRoomSheet, SheetFrame } from './SheetFrame.tsx';
import { WaitingSheet } from './WaitingSheet.tsx';

/** ms after which a classroom that could not be opened is tried again */
const RETRY = 15_000;

interface Props {
  readonly id: string;
  /** Tests bring their own. */
  readonly openWith?: typeof openSession;
  readonly analystOf?: () => OpenedClassroom['analyst'];
}

/** Opens the classroom of the address; the frame stands at once, the drawing when it is ready. */
export function OpenClassroom({ id, openWith = openSession, analystOf = createAnalyst }: Props) {
  const [opened, setOpened] = useState<OpenedClassroom | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const again = useRef(() => {});

  useEffect(() => {
    let isGone = false;
    let isOpening = false;
    let timer: ReturnType<typeof setTimeout> | undefined;
    let close = (): void => undefined;
    /** What was said of this classroom is not about the next. What was said in going there is. */
    let own = announcer.latest();
    const announce: Session['announce'] = (text, isOnPage) => {
      if (isGone) return;
      announcer.say(text, isOnPage);
      own = announcer.latest();
    };
    fetchRoomSheet().catch(() => undefined); // told by the sheet's own boundary when it is drawn

    function open(): void {
      clearTimeout(timer);
      if (isGone || isOpening) return;
      isOpening = true;
      const analyst = analystOf();
      const start = startOf(id);
      openWith(id, { analyst, person: me(), announce, ...(start && { start }) }).then(
        (session) => {
          forgetStart(id);
          close = () => void session.close().finally(() => analyst.close());
          if (isGone) close();
          else {
            setOpened({ session, analyst });
            // What was proven of the mats is known again, whichever sheet is shown; told by its own part of the checks.
            import('../mats/proofStore.ts').then(({ proofStoreOf }) => !isGone && proofStoreOf(session, analyst)).catch(() => undefined);
          }
        },
        (error: unknown) => {
          analyst.close();
          isOpening = false;
          if (isGone) return;
          setTrouble(error instanceof Error ? error.message : String(error));
          timer = setTimeout(open, RETRY);
        },
      );
    }
    again.current = open;
    open();
    addEventListener('online', open);
    return () => {
      isGone = true;
      if (announcer.latest() === own) announcer.say('');
      clearTimeout(timer);
      removeEventListener('online', open);
      close();
    };
  }, [id, openWith, analystOf]);

  if (!opened) return <WaitingSheet trouble={trouble === null ? null : { words: trouble, retry: () => again.current() }} />;
  return (
    <SessionProvider opened={opened}>
      <SheetFrame />
    </SessionProvider>
  );
}
