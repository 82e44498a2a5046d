import type Konva from 'konva';
import { type PointerEvent, type ReactNode, Suspense, useEffect, useId, useLayoutEffect, useMemo, useRef, useState } from 'react';
import { Layer, Shape, Stage } from 'react-konva';
import '../ui/drawingShapes.ts';
import { useFrameDialogs } from '../frame/frameDialogs.ts';
import { focusFront } from '../front/frontFocus.ts';
import { useMayChange, useSession } from '../session/hooks.ts';
import { fetchWhenQuiet } from '../session/whenQuiet.ts';
import '../styles/plan.css';
import { late } from '../ui/late.tsx';
import { createPlanKeys } from './keys.ts';
import { drawLayer } from './layers.ts';
import { createPlanModel, fitWholeRoom, type LayerName, layerNames, type PlanModel } from './planModel.ts';
import { planStoreOf } from './planStore.ts';
import { createPlanPointer, type Press } from './pointer.ts';
import { usePlanState } from './usePlanState.ts';
import { useRedraw } from './useRedraw.ts';
import type { Size } from './viewport.ts';

const loadDraftLine = () => import('./DraftLine.tsx');
const DraftLine = late(() => loadDraftLine().then((m) => m.DraftLine));
fetchWhenQuiet(loadDraftLine);

/** The room drawn to scale: choose, slide, turn, draw. The lists beside it hold the same in words. */
export function Plan() {
  const session = useSession();
  const box = useRef<HTMLDivElement>(null);
  const layers = useRef(new Map<LayerName, Konva.Layer>());
  const model = useMemo(() => {
    const made: PlanModel = createPlanModel(session, (...names) => {
      for (const name of names) layers.current.get(name)?.batchDraw();
      if (names.includes('sheet')) sayView(box.current, made);
      if (names.includes('over')) sayRest(box.current, made);
    });
    return made;
  }, [session]);
  const pointer = useMemo(() => createPlanPointer(model), [model]);
  const { open } = useFrameDialogs();
  const keys = useMemo(() => createPlanKeys(model, pointer, focusFront, () => open('keys')), [model, pointer, open]);
  const size = useSizeOf(box);
  useRedraw(model);
  useFit(model, size);
  useWheel(box, pointer.wheel);
  useEffect(() => () => void pointer.cancel(), [pointer]);
  const help = useId();
  const words = usePlanHelp(useMayChange());

  function press(event: PointerEvent): Press {
    const frame = box.current?.getBoundingClientRect();
    return {
      id: event.pointerId,
      at: { x: event.clientX - (frame?.left ?? 0), y: event.clientY - (frame?.top ?? 0) },
      isTouch: event.pointerType === 'touch',
      isFree: event.altKey,
      isPan: event.button === 1,
      isMore: event.shiftKey,
    };
  }

  return (
    <div className="plan">
      <div
        ref={box}
        className="plan-paper"
        role="application"
        aria-roledescription="plan"
        aria-label="Plan of the room"
        aria-describedby={help}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: an application takes the keys of what it shows
        tabIndex={0}
        onPointerDown={(event) => {
          if (event.button > 1) return;
          event.currentTarget.setPointerCapture(event.pointerId);
          pointer.down(press(event));
        }}
        onPointerMove={(event) => pointer.move(press(event))}
        onPointerUp={(event) => pointer.up(press(event))}
        onPointerCancel={pointer.cancel}
        onPointerLeave={pointer.leave}
        onKeyDown={(event) => {
          if (!keys.press(event)) return;
          event.preventDefault();
          event.stopPropagation();
        }}
      >
        <div aria-hidden="true">
          <Stage width={size.width} height={size.height} listening={false}>
            {layerNames.map((name) => (
              <Layer
                key={name}
                listening={false}
                ref={(layer) => {
                  if (layer) layers.current.set(name, layer);
                  else layers.current.delete(name);
                }}
              >
                <Drawing name={name} model={model} />
              </Layer>
            ))}
          </Stage>
        </div>
      </div>
      <WholeRoom />
      <Drafting />
      <p id={help} className="only-heard">
        {words}
      </p>
    </div>
  );
}

/** Long words that nobody sees: they come once the drawing stands. */
function usePlanHelp(mayChange: boolean): string {
  const [words, setWords] = useState('');
  useEffect(() => fetchWhenQuiet(() => import('./planHelp.ts').then((help) => setWords(help.planHelp(mayChange)))), [mayChange]);
  return words;
}

/** What a tool in hand asks. */
function Drafting() {
  const { tool } = usePlanState('tool');
  if (!tool) return null;
  return (
    <Suspense fallback={null}>
      <DraftLine />
    </Suspense>
  );
}

function WholeRoom() {
  const store = planStoreOf(useSession());
  const { isMoved } = usePlanState('isMoved');
  if (!isMoved) return null;
  return (
    <button type="button" className="whole-room" onClick={() => store.set({ wholeRoom: store.state().wholeRoom + 1 })}>
      Whole room
    </button>
  );
}

/** How the plan lies on the screen, for whoever looks at the page from outside (tests, print). */
function sayView(element: HTMLElement | null, { view }: PlanModel): void {
  if (element) element.dataset.view = `${view.k} ${view.x} ${view.y}`;
  // The first drawn plan, for the bench; the canvas was asked for its frame just before.
  if (performance.getEntriesByName('plan-drawn').length === 0) requestAnimationFrame(() => performance.mark('plan-drawn'));
}

/** What the foot of the drawing says of the thing in hand, for the same. */
function sayRest(element: HTMLElement | null, { store }: PlanModel): void {
  const { rest } = store.state();
  if (element && (element.dataset.rest ?? '') !== rest) element.dataset.rest = rest;
}

/** One shape a canvas: the drawing functions know the rest. */
function Drawing({ name, model }: { name: LayerName; model: PlanModel }): ReactNode {
  return <Shape listening={false} perfectDrawEnabled={false} sceneFunc={(context) => drawLayer(name, context._context, model)} />;
}

function useSizeOf(box: React.RefObject<HTMLDivElement | null>): Size {
  const [size, setSize] = useState<Size>({ width: 0, height: 0 });
  useLayoutEffect(() => {
    const element = box.current;
    if (!element) return;
    const measure = (): void => {
      const { width, height } = element.getBoundingClientRect();
      setSize((before) => (before.width === width && before.height === height ? before : { width, height }));
    };
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, [box]);
  return size;
}

/** The whole room as long as nobody has moved the paper. */
function useFit(model: PlanModel, size: Size): void {
  useLayoutEffect(() => {
    model.size = size;
    if (size.width > 0 && !model.store.state().isMoved) fitWholeRoom(model);
  }, [model, size]);
}

/** The wheel must be taken from the page, which React's own listener may not do. */
function useWheel(
  box: React.RefObject<HTMLDivElement | null>,
  wheel: (at: { x: number; y: number }, by: { x: number; y: number }, isZoom: boolean) => void,
): void {
  useEffect(() => {
    const element = box.current;
    if (!element) return;
    const turn = (event: WheelEvent): void => {
      event.preventDefault();
      const frame = element.getBoundingClientRect();
      wheel({ x: event.clientX - frame.left, y: event.clientY - frame.top }, { x: event.deltaX, y: event.deltaY }, !event.shiftKey);
    };
    element.addEventListener('wheel', turn, { passive: false });
    return () => element.removeEventListener('wheel', turn);
  }, [box, wheel]);
}
