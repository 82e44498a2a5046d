import { type KeyboardEvent, useCallback, useEffect, useMemo, useRef } from 'react';
import { trayGapOf } from '#model/measures/order/classOptions.ts';
import type { Scene, SceneSide } from '#model/scene/types.ts';
import { sayLength } from '#model/units/sayLength.ts';
import { useMayChange, useRestingReport, useSession, useUnits, useViewOf } from '../session/hooks.ts';
import { capital } from '../text/sayList.ts';
import { DropStrip } from './DropStrip.tsx';
import { FrontHead } from './FrontHead.tsx';
import { FrontStage } from './FrontStage.tsx';
import { frontActions } from './frontActions.ts';
import { focusPlan, showHead } from './frontFocus.ts';
import { keyMeaning } from './frontKeys.ts';
import { frontLayout } from './frontLayout.ts';
import { frontLines, sayLines } from './frontLines.ts';
import { frontView, heightFor, isNarrow } from './frontView.ts';
import { LineLegend } from './LineLegend.tsx';
import { lineHeights } from './lineHeights.ts';
import { orderMoves } from './orderMoves.ts';
import { withBoardAt, withPreview } from './preview.ts';
import { shelfWords, sideName } from './shelfNames.ts';
import { useBoardDrag } from './useBoardDrag.ts';
import { useBoxSize } from './useBoxSize.ts';
import { usePointed } from './usePointed.ts';
import { type TrayInHand, useTrayDrag } from './useTrayDrag.ts';

interface Props {
  readonly scene: Scene;
  readonly side: SceneSide;
}

/** px: a narrow drawing grows no higher than this */
const MOST_HIGH = 460;

/** One shelf side with its trays: choose, slide, put elsewhere, put away, raise and lower boards. */
export function FrontOf({ scene, side }: Props) {
  const session = useSession();
  const units = useUnits();
  const moves = orderMoves(useRestingReport(), scene);
  const chosenThing = useViewOf('chosen');
  const marked = useViewOf('material');
  const pointed = usePointed(scene);
  const box = useRef<HTMLDivElement>(null);
  const size = useBoxSize(box);
  const actions = useMemo(() => frontActions(session), [session]);
  const gap = trayGapOf(scene.classroom);
  const layout = useMemo(() => frontLayout(side, gap), [side, gap]);
  const heights = useMemo(() => lineHeights(scene, side, layout), [scene, side, layout]);
  const lines = useMemo(() => (heights ? frontLines(heights, units) : []), [heights, units]);
  const direction = scene.classroom.display.readingDirection;
  const top = Math.max(layout.top, ...lines.map((line) => line.z));
  const view = useMemo(
    () => (size.width > 0 ? frontView({ ...size, shelf: layout.width, top, isMirrored: direction === 'rtl' }) : null),
    [size, layout.width, top, direction],
  );
  const hasSize = size.width > 0;
  const isSlim = hasSize && isNarrow(size.width);
  useEffect(() => {
    if (hasSize && box.current) showHead(box.current);
  }, [hasSize]);
  const sayShelf = useCallback((piece: string) => shelfWords(scene, piece), [scene]);
  const mayChange = useMayChange();
  const canEdit = mayChange && !side.piece.locked;
  const isStepOpen = useRef(false);

  const trayDrag = useTrayDrag({ box, layout, view, gap, onDrop: letGo });
  const boardDrag = useBoardDrag({
    layout,
    view,
    onDrop: ({ board, surface }) => {
      session.commands.changeLevel(session.arrangement().id, side.piece.id, board, { surface });
      session.announce(`The board is at ${sayLength(surface, units)}.`);
    },
  });
  const { hand } = trayDrag;
  const drop = hand?.drop ?? null;
  const shown = useMemo(() => {
    const withTrays = withPreview(layout, drop && { board: drop.board.key, places: drop.places });
    return boardDrag.hand ? withBoardAt(withTrays, boardDrag.hand.board, boardDrag.hand.surface) : withTrays;
  }, [layout, drop, boardDrag.hand]);
  const chosen = chosenThing?.kind === 'tray' ? chosenThing.id : null;
  const title = capital(sideName(scene, side));

  function letGo({ tray, drop: onto, over }: TrayInHand): void {
    const other = scene.sides.find((each) => `${each.piece.id}/${each.side}` === over);
    if (onto) actions.stand(layout, onto.board, tray.id, onto.places, onto.shortBy);
    else if (over === 'table') actions.putAway(tray.id);
    else if (other) void actions.toShelf(tray.id, other);
    else session.announce(`${tray.name} stays where it was.`);
  }

  function choose(id: string): void {
    session.setView({ chosen: { kind: 'tray', id }, material: id, frontOf: { piece: side.piece.id, side: side.side } });
  }

  function onKeyDown(event: KeyboardEvent): void {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    if (event.key === 'Escape' && !chosen && focusPlan()) {
      event.preventDefault();
      event.stopPropagation();
      session.setView({ chosen: { kind: 'piece', id: side.piece.id } });
      session.announce('Back on the plan.');
      return;
    }
    const meaning = keyMeaning(layout, chosen, { key: event.key, shift: event.shiftKey }, gap, direction);
    if (!meaning) return;
    event.preventDefault();
    event.stopPropagation();
    if (meaning.does === 'choose') {
      choose(meaning.id);
      const tray = layout.boards.flatMap((board) => board.trays).find((each) => each.id === meaning.id);
      session.announce(tray ? `${tray.step === '' ? '' : `${tray.step}, `}${tray.name}` : '');
    }
    if (meaning.does === 'nothing') session.announce(meaning.say);
    if (meaning.does === 'let go') {
      session.setView({ chosen: null });
      session.announce('It is let go. Escape once more comes back to the plan.');
    }
    if (meaning.does === 'put away' && chosen) actions.putAway(chosen);
    if (meaning.does === 'stand' && chosen) {
      // A key held down is one step to take back.
      if (!isStepOpen.current) session.undo.beginStep();
      isStepOpen.current = true;
      actions.stand(layout, meaning.board, chosen, meaning.places, meaning.shortBy);
    }
  }

  function endStep(): void {
    if (!isStepOpen.current) return;
    isStepOpen.current = false;
    session.undo.endStep();
  }

  return (
    <section className="front" aria-labelledby="front-title">
      <FrontHead scene={scene} side={side} isHeld={hand !== null} title={title} />
      {/* biome-ignore lint/a11y/useSemanticElements: a fieldset has no drawing */}
      <div
        ref={box}
        className="front-drawing"
        style={isSlim ? { flex: 'none', height: heightFor(size.width, layout.width, top, MOST_HIGH) } : undefined}
        role="group"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: the drawing takes the keys; the tray list is its accessible twin
        tabIndex={0}
        aria-label={`${title}: drawing. Tab goes through the trays, ${canEdit ? 'arrows slide the chosen one, Delete puts it on the table, ' : ''}Escape comes back to the plan. The tray list holds the same.`}
        onKeyDown={onKeyDown}
        onKeyUp={endStep}
        onBlur={endStep}
      >
        <div aria-hidden="true" className="front-canvas">
          {view && (
            <FrontStage
              layout={shown}
              view={view}
              lines={lines}
              moves={moves}
              chosen={chosen}
              marked={marked}
              pointed={pointed}
              held={hand && { tray: hand.tray, x: hand.x, y: hand.y }}
              units={units}
              direction={direction}
              sayShelf={sayShelf}
              canEdit={canEdit}
              onTrayDown={(id, event) => {
                event.cancelBubble = true;
                choose(id);
                box.current?.focus({ preventScroll: true });
                const board = layout.boards.find((each) => each.trays.some((tray) => tray.id === id));
                const tray = board?.trays.find((each) => each.id === id);
                if (!board || !tray || !mayChange) return;
                trayDrag.start(tray, event.evt, { x: view.toX(board.left + tray.x), y: view.toY(board.surface) });
              }}
              onBoardDown={(key, event) => {
                event.cancelBubble = true;
                const board = layout.boards.find((each) => each.key === key);
                if (board) boardDrag.start(key, board.surface, event.evt);
              }}
            />
          )}
        </div>
      </div>
      {hand && <DropStrip scene={scene} side={side} over={hand.over} />}
      <LineLegend lines={lines} isShown={isSlim} />
      {heights && <p className="front-words aside">{sayLines(heights, units)}</p>}
    </section>
  );
}
