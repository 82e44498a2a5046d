import { Suspense, useEffect, useSyncExternalStore } from 'react';
import { Dialogs } from './frame/Dialogs.tsx';
import { OpenClassroom } from './frame/OpenClassroom.tsx';
import { UpdateNotice } from './frame/UpdateNotice.tsx';
import { WaitingSheet } from './frame/WaitingSheet.tsx';
import { classroomInAddress, isForLooking } from './session/address.ts';
import { readRoomsHere } from './session/roomsHere.ts';
import { fetchWhenQuiet } from './session/whenQuiet.ts';
import { openDemoRoom } from './start/openDemoRoom.ts';
import { HatchPatterns } from './ui/hatches.tsx';
import { late } from './ui/late.tsx';

const loadStartPage = () => import('./start/StartPage.tsx');
const StartPage = late(() => loadStartPage().then((m) => m.StartPage));
fetchWhenQuiet(loadStartPage);

function subscribeAddress(listener: () => void): () => void {
  addEventListener('hashchange', listener);
  return () => removeEventListener('hashchange', listener);
}

/** The bare address on a device that knows no classroom yet, and `…/#demo`, lay out a fresh copy of the demo room. */
const isForDemo = (): boolean => location.hash === '#demo' || (location.hash === '' && readRoomsHere().length === 0);

function goToDemo(): void {
  if (isForDemo()) void openDemoRoom();
}

/** A classroom when the address names one, else the start page. */
export function App() {
  const id = useSyncExternalStore(subscribeAddress, () => classroomInAddress(location.hash));
  const isLook = useSyncExternalStore(subscribeAddress, () => isForLooking(location.hash));
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
      <UpdateNotice />
      {id !== null ? (
        <OpenClassroom key={`${id} ${isLook}`} id={id} />
      ) : isForDemo() ? (
        <WaitingSheet trouble={null} />
      ) : (
        <Suspense fallback={<WaitingSheet trouble={null} />}>
          <StartPage />
        </Suspense>
      )}
    </Dialogs>
  );
}
