import { lazy, Suspense, useEffect } from 'react';
import { Tab, TabList, TabPanel, Tabs } from 'react-aria-components';
import { useClassroom, useSession, useView } from '../session/hooks.ts';
import { noteRoomHere } from '../session/roomsHere.ts';
import type { SheetName } from '../session/types.ts';
import { ArrangementSwitch } from './ArrangementSwitch.tsx';
import { EdgeTools } from './EdgeTools.tsx';
import { FrameDialogSet } from './FrameDialogSet.tsx';
import { SheetBoundary } from './SheetBoundary.tsx';
import { StatusLine } from './StatusLine.tsx';
import { sheetOrder } from './TitleBlock.tsx';
import { useUndoKeys } from './useUndoKeys.ts';

const sheetNames: Readonly<Record<SheetName, string>> = { room: 'Room', materials: 'Materials', places: 'Places' };
const sheets = {
  room: lazy(() => import('../sheets/RoomSheet.tsx').then((m) => ({ default: m.RoomSheet }))),
  materials: lazy(() => import('../sheets/MaterialsSheet.tsx').then((m) => ({ default: m.MaterialsSheet }))),
  places: lazy(() => import('../sheets/PlacesSheet.tsx').then((m) => ({ default: m.PlacesSheet }))),
} satisfies Record<SheetName, unknown>;

/** Tabs on the top edge, the framed sheet under them. */
export function SheetFrame() {
  const session = useSession();
  const view = useView();
  const classroom = useClassroom();
  useUndoKeys();

  useEffect(() => {
    document.title = `${classroom.name || 'Class without a name'} – Lowshelf`;
    noteRoomHere(session.id, classroom.name);
  }, [session.id, classroom.name]);

  return (
    <Tabs
      className="desk"
      selectedKey={view.sheet}
      onSelectionChange={(key) => {
        const sheet = sheetOrder.find((name) => name === key);
        if (sheet && sheet !== view.sheet) session.setView({ sheet });
      }}
    >
      <header className="top-edge">
        <TabList className="tabs" aria-label="Sheets">
          {sheetOrder.map((name, index) => (
            <Tab key={name} id={name} className="tab">
              <span className="number">{index + 1}</span> {sheetNames[name]}
            </Tab>
          ))}
        </TabList>
        <div className="edge-tools">
          <ArrangementSwitch />
          <EdgeTools />
        </div>
      </header>
      <main className="sheet-place">
        {sheetOrder.map((name) => {
          const Sheet = sheets[name];
          return (
            <TabPanel key={name} id={name} className="sheet">
              <div className="neat">
                <StatusLine />
                <SheetBoundary>
                  <Suspense fallback={<p className="waiting-words">The drawing is being laid out …</p>}>
                    <Sheet />
                  </Suspense>
                </SheetBoundary>
              </div>
            </TabPanel>
          );
        })}
      </main>
      <FrameDialogSet />
    </Tabs>
  );
}
