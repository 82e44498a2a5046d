import { useEffect, useSyncExternalStore } from 'react';
import { Dialogs } from './frame/Dialogs.tsx';
import { OpenClassroom } from './frame/OpenClassroom.tsx';
import { UpdateNotice } from './frame/UpdateNotice.tsx';
import { classroomInAddress } from './session/address.ts';
import { openDemoRoom } from './start/openDemoRoom.ts';
import { StartPage } from './start/StartPage.tsx';
import { HatchPatterns } from './ui/hatches.tsx';

function subscribeAddress(listener: () => void): () => void {
  addEventListener('hashchange', listener);
  return () => removeEventListener('hashchange', listener);
}

/** `…/#demo` lays out a fresh copy of the demo room. */
function goToDemo(): void {
  if (location.hash === '#demo') void openDemoRoom();
}

/** A classroom when the address names one, else the start page. */
export function App() {
  const id = useSyncExternalStore(subscribeAddress, () => classroomInAddress(location.hash));
  useEffect(() => {
    if (id === null) document.title = 'Lowshelf';
  }, [id]);
  useEffect(() => {
    goToDemo();
    return subscribeAddress(goToDemo);
  }, []);
  return (
    <Dialogs>
      <HatchPatterns />
      {id === null ? <StartPage /> : <OpenClassroom key={id} id={id} />}
      <UpdateNotice />
    </Dialogs>
  );
}
