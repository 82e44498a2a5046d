import { useEffect, useSyncExternalStore } from 'react';
import { Dialogs } from './frame/Dialogs.tsx';
import { OpenClassroom } from './frame/OpenClassroom.tsx';
import { UpdateNotice } from './frame/UpdateNotice.tsx';
import { classroomInAddress } from './session/address.ts';
import { StartPage } from './start/StartPage.tsx';
import { HatchPatterns } from './ui/hatches.tsx';

function subscribeAddress(listener: () => void): () => void {
  addEventListener('hashchange', listener);
  return () => removeEventListener('hashchange', listener);
}

/** A classroom when the address names one, else the start page. */
export function App() {
  const id = useSyncExternalStore(subscribeAddress, () => classroomInAddress(location.hash));
  useEffect(() => {
    if (id === null) document.title = 'Lowshelf';
  }, [id]);
  return (
    <Dialogs>
      <HatchPatterns />
      {id === null ? <StartPage /> : <OpenClassroom key={id} id={id} />}
      <UpdateNotice />
    </Dialogs>
  );
}
