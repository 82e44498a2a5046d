import { Suspense, useEffect, useRef } from 'react';
import { useClassroom, useSession, useViewOf } from '../session/hooks.ts';
import { noteRoomHere } from '../session/roomsHere.ts';
import type { SheetName } from '../session/types.ts';
import { late } from '../ui/late.tsx';
import { panelId, TabRow, tabId } from '../ui/TabRow.tsx';
import { ArrangementSwitch } from './ArrangementSwitch.tsx';
import { EdgeTools } from './EdgeTools.tsx';
import { FrameDialogSet } from './FrameDialogSet.tsx';
import { keepFocus } from './keepFocus.ts';
import { SheetBoundary } from './SheetBoundary.tsx';
import { SkipToChecks } from './SkipToChecks.tsx';
import { StatusLine } from './StatusLine.tsx';
import { sheetOrder } from './TitleBlock.tsx';
import { useUndoKeys } from './useUndoKeys.ts';

const sheetNames: Readonly<Record<SheetName, string>> = {
  room: 'Room',
  materials: 'Materials',
  places: 'Places',
  'move-day': 'Move day',
};
/** Begun while the classroom is still being read, so that the drawing waits for one of the two only. */
export const fetchRoomSheet = () => import('../sheets/RoomSheet.tsx');
const sheets = {
  room: late(() => fetchRoomSheet().then((m) => m.RoomSheet)),
  materials: late(() => import('../sheets/MaterialsSheet.tsx').then((m) => m.MaterialsSheet)),
  places: late(() => import('../sheets/PlacesSheet.tsx').then((m) => m.PlacesSheet)),
  'move-day': late(() => import('../sheets/MoveDaySheet.tsx').then((m) => m.MoveDaySheet)),
} satisfies Record<SheetName, unknown>;

/** A press on what opens a dialog does not take the keys off the drawing: when the dialog closes, its letters work as before. */
function leaveOnPlan(event: MouseEvent): void {
  const isAside = event.target instanceof Element && event.target.closest('.people, .title-block, .short-title-words');
  if (isAside && document.activeElement?.matches('.plan-paper')) event.preventDefault();
}

/** Tabs on the top edge, the framed sheet under them. */
export function SheetFrame() {
  const session = useSession();
  const sheet = useViewOf('sheet');
  const classroom = useClassroom();
  const Sheet = sheets[sheet];
  const desk = useRef<HTMLDivElement>(null);
  const neat = useRef<HTMLDivElement>(null);
  useUndoKeys();
  useEffect(() => (neat.current ? keepFocus(neat.current) : undefined), []);
  useEffect(() => {
    const part = desk.current;
    part?.addEventListener('mousedown', leaveOnPlan);
    return () => part?.removeEventListener('mousedown', leaveOnPlan);
  }, []);

  useEffect(() => {
    document.title = `${classroom.name || 'Class without a name'} – Lowshelf`;
    noteRoomHere(session.id, classroom.name);
  }, [session.id, classroom.name]);

  return (
    <div className="desk" ref={desk}>
      <header className="top-edge">
        {sheet === 'room' && <SkipToChecks />}
        <TabRow
          label="Sheets"
          shown={sheet}
          onShow={(next) => next !== sheet && session.setView({ sheet: next })}
          tabs={sheetOrder.map((name, index) => ({
            id: name,
            content: (
              <>
                <span className="number">{index + 1}</span> {sheetNames[name]}
              </>
            ),
          }))}
        />
        <div className="edge-tools">
          <ArrangementSwitch />
          <EdgeTools />
        </div>
      </header>
      <main className="sheet-place">
        <div className="sheet" role="tabpanel" id={panelId(sheet)} aria-labelledby={tabId(sheet)}>
          <div className="neat" ref={neat}>
            <StatusLine />
            <SheetBoundary key={sheet}>
              <Suspense fallback={<p className="waiting-words">The drawing is being laid out …</p>}>
                <Sheet />
              </Suspense>
            </SheetBoundary>
          </div>
        </div>
      </main>
      <FrameDialogSet />
    </div>
  );
}
