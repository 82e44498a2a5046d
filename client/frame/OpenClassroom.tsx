import { useEffect, useState } from 'react';
import { announcer } from '../session/announcer.ts';
import { me } from '../session/me.ts';
import { openSession } from '../session/openSession.ts';
import { type OpenedClassroom, SessionProvider } from '../session/SessionProvider.tsx';
import { forgetStart, startOf } from '../session/starts.ts';
import { createAnalyst } from '../worker/createAnalyst.ts';
import { fetchRoomSheet, SheetFrame } from './SheetFrame.tsx';
import { WaitingSheet } from './WaitingSheet.tsx';

/** Opens the classroom of the address; the frame stands at once, the drawing when it is ready. */
export function OpenClassroom({ id }: { id: string }) {
  const [opened, setOpened] = useState<OpenedClassroom | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);

  useEffect(() => {
    let isGone = false;
    let close = (): void => undefined;
    const analyst = createAnalyst();
    fetchRoomSheet().catch(() => undefined); // told by the sheet's own boundary when it is drawn
    const start = startOf(id);
    openSession(id, { analyst, person: me(), announce: announcer.say, ...(start && { start }) }).then(
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
        if (!isGone) setTrouble(error instanceof Error ? error.message : String(error));
      },
    );
    return () => {
      isGone = true;
      close();
    };
  }, [id]);

  if (!opened) return <WaitingSheet trouble={trouble} />;
  return (
    <SessionProvider opened={opened}>
      <SheetFrame />
    </SessionProvider>
  );
}
