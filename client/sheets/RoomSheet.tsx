import { type ReactNode, Suspense, useEffect, useRef, useState } from 'react';
import { pieceNumbers } from '#model/schema/pieceNumbers.ts';
import { ChecksColumn } from '../checks/ChecksColumn.tsx';
import { openGroups } from '../checks/sortFindings.ts';
import { SwapButton } from '../frame/SheetLayout.tsx';
import { ShortState, ShortTitle } from '../frame/ShortTitle.tsx';
import { TitleBlock } from '../frame/TitleBlock.tsx';
import { type Layout, useLayout } from '../frame/useLayout.ts';
import { ShelfList } from '../lists/ShelfList.tsx';
import { ChosenStrip } from '../plan/ChosenStrip.tsx';
import { DrawVerbs } from '../plan/DrawVerbs.tsx';
import { Plan } from '../plan/Plan.tsx';
import { usePlanState } from '../plan/usePlanState.ts';
import { useClassroom, useReportOf, useViewOf } from '../session/hooks.ts';
import { BlankHint } from '../states/BlankHint.tsx';
import { late } from '../ui/late.tsx';
import { ScrollPart } from '../ui/ScrollPart.tsx';

// The plan is drawn first; what hangs on a chosen shelf comes right after.
const LazyFront = late(() => import('../front/Front.tsx').then((m) => m.Front));
const LazyTrayList = late(() => import('../lists/TrayList.tsx').then((m) => m.TrayList));
const LazyLaidOver = late(() => import('../laidOver/LaidOver.tsx').then((m) => m.LaidOver));
const Front = () => (
  <Suspense fallback={null}>
    <LazyFront />
  </Suspense>
);
const TrayList = () => (
  <Suspense fallback={null}>
    <LazyTrayList />
  </Suspense>
);

/** The room: plan and shelf list, front and tray list, checks. */
export function RoomSheet() {
  const layout = useLayout();
  switch (layout) {
    case 'wide':
      return <WideSheet />;
    case 'tablet':
      return <TabletSheet />;
    case 'stacked':
      return <StackedSheet />;
    case 'phone':
      return <PhoneSheet />;
  }
}

function WideSheet() {
  return (
    <div className="room-sheet wide">
      <PlanPart layout="wide" />
      <div className="room-middle">
        <ScrollPart className="room-shelves" label="Shelf list">
          <ShelfList />
        </ScrollPart>
        <div className="room-strip">
          <ChosenStrip />
        </div>
      </div>
      <ScrollPart className="room-front" label="Shelf front">
        <Front />
      </ScrollPart>
      <ScrollPart className="room-trays" label="Trays">
        <TrayList />
      </ScrollPart>
      <div className="layout-right">
        <ScrollPart className="right-panel" label="Checks">
          <ChecksColumn />
        </ScrollPart>
        <TitleBlock />
      </div>
    </div>
  );
}

type RightPart = 'checks' | 'shelves' | 'front';

/** What is shown of the parts: the person's choice, and the front, the checks or, with a part of its own, the drawing as soon as it is asked for anywhere. */
function useShownPart<P extends PhonePart>(first: P | 'front', checks: P, drawing: P | null = null) {
  const [shown, setShown] = useState(first);
  const { frontAsked, drawingAsked, checksAsked } = usePlanState('frontAsked', 'drawingAsked', 'checksAsked');
  const checked = useRef(checksAsked);
  useEffect(() => {
    if (checked.current === checksAsked) return;
    checked.current = checksAsked;
    setShown(checks);
  }, [checksAsked, checks]);
  const drawn = useRef(drawingAsked);
  useEffect(() => {
    if (drawn.current === drawingAsked) return;
    drawn.current = drawingAsked;
    if (drawing !== null) setShown(drawing);
  }, [drawingAsked, drawing]);
  const seen = useRef(frontAsked);
  useEffect(() => {
    if (seen.current === frontAsked) return;
    seen.current = frontAsked;
    setShown('front');
  }, [frontAsked]);
  return [shown, setShown] as const;
}

function TabletSheet() {
  const [shown, setShown] = useShownPart<RightPart>('checks', 'checks');
  // Its verbs stand with the trays and not in the strip, whose room they are given.
  const hasVerbs = useViewOf('chosen')?.kind === 'tray' && shown === 'front';
  return (
    <div className={`room-sheet tablet${hasVerbs ? ' with-tray-verbs' : ''}`}>
      <PlanPart layout="tablet" />
      <div className="layout-right">
        <ScrollPart className="right-panel swapped" label="Checks, shelves or front">
          <Swap parts={['checks', 'shelves', 'front']} shown={shown} onShow={setShown} />
          {shown === 'checks' && <ChecksColumn />}
          {shown === 'shelves' && <ShelfList />}
          {shown === 'front' && (
            <>
              <div className="front-beside">
                <Front />
              </div>
              <TrayList />
            </>
          )}
        </ScrollPart>
      </div>
      <div className="room-strip">
        <ChosenStrip />
        <ShortState />
      </div>
    </div>
  );
}

/** Room for the plan alone: at 200 % the lists go under the drawing. */
function StackedSheet() {
  return (
    <div className="room-sheet stacked">
      <PlanPart layout="stacked" />
      <div className="room-strip">
        <ChosenStrip />
      </div>
      <ScrollPart className="room-shelves" label="Shelf list">
        <ShelfList />
      </ScrollPart>
      <ScrollPart className="room-front" label="Shelf front">
        <Front />
      </ScrollPart>
      <ScrollPart className="room-trays" label="Trays">
        <TrayList />
      </ScrollPart>
      <div className="layout-right">
        <ScrollPart className="right-panel" label="Checks">
          <ChecksColumn />
        </ScrollPart>
        <TitleBlock />
      </div>
    </div>
  );
}

type PhonePart = 'drawing' | RightPart;

function PhoneSheet() {
  const [shown, setShown] = useShownPart<PhonePart>('drawing', 'checks', 'drawing');
  return (
    <div className="room-sheet phone">
      <Swap parts={['drawing', 'shelves', 'front', 'checks']} shown={shown} onShow={setShown} />
      {shown === 'drawing' && <PlanPart layout="phone" />}
      {shown === 'drawing' && (
        <div className="room-strip">
          <ChosenStrip />
        </div>
      )}
      {shown === 'shelves' && (
        <ScrollPart className="room-shelves" label="Shelf list">
          <ShelfList />
        </ScrollPart>
      )}
      {shown === 'front' && (
        <>
          <ScrollPart className="room-front" label="Shelf front">
            <Front />
          </ScrollPart>
          <ScrollPart className="room-trays" label="Trays">
            <TrayList />
          </ScrollPart>
        </>
      )}
      <div className="layout-right">
        {shown === 'checks' && (
          <ScrollPart className="right-panel" label="Checks">
            <ChecksColumn />
          </ScrollPart>
        )}
        <TitleBlock />
      </div>
    </div>
  );
}

function PlanPart({ layout }: { layout: Layout }) {
  const laid = useViewOf('laid');
  return (
    <section className="room-plan" aria-label="Plan">
      {layout !== 'tablet' && (
        <div className="verb-line">
          <DrawVerbs />
        </div>
      )}
      <div className="drawing">
        <Plan />
        <BlankHint />
      </div>
      {laid !== null && (
        <Suspense fallback={null}>
          <LazyLaidOver />
        </Suspense>
      )}
      {layout === 'tablet' && (
        <div className="short-title">
          <DrawVerbs />
          <ShortTitle />
        </div>
      )}
    </section>
  );
}

const partNames: Readonly<Record<PhonePart, string>> = { drawing: 'Drawing', checks: 'Checks', shelves: 'Shelves', front: 'Front' };

function Swap<P extends PhonePart>({ parts, shown, onShow }: { parts: readonly P[]; shown: P; onShow: (part: P) => void }): ReactNode {
  const open = useReportOf((report) => (report ? openGroups(report).length : 0));
  const frontOf = useViewOf('frontOf');
  const numbers = pieceNumbers(useClassroom());
  const shelf = frontOf ? numbers.get(frontOf.piece) : undefined;
  return (
    <fieldset className="swap" aria-label="What is shown">
      {parts.map((part) => (
        <SwapButton key={part} isShown={part === shown} onPress={() => onShow(part)}>
          {part === 'front' && shelf && !parts.some((other) => other === 'drawing') ? `Shelf ${shelf}, front` : partNames[part]}
          {part === 'checks' && open > 0 ? ` ${open}` : ''}
        </SwapButton>
      ))}
    </fieldset>
  );
}
