import { useEffect, useRef, useState } from 'react';
import type { FrontLayout } from './frontLayout.ts';
import type { FrontView } from './frontView.ts';
import { boardHeight } from './preview.ts';

export interface BoardInHand {
  readonly board: string;
  /** mm above the floor */
  readonly surface: number;
}

interface Wiring {
  readonly layout: FrontLayout | null;
  readonly view: FrontView | null;
  readonly onDrop: (hand: BoardInHand) => void;
}

/** Follows a board's grip up and down; the height is written once, when it is let go. Esc puts it back. */
export function useBoardDrag(wiring: Wiring) {
  const latest = useRef(wiring);
  latest.current = wiring;
  const [press, setPress] = useState<{ pointer: number; board: string; fromY: number; surface: number } | null>(null);
  const [hand, setHand] = useState<BoardInHand | null>(null);

  useEffect(() => {
    if (!press) return;
    let last: BoardInHand | null = null;
    const stop = () => {
      setPress(null);
      setHand(null);
    };
    const move = (event: PointerEvent) => {
      const { layout, view } = latest.current;
      if (event.pointerId !== press.pointer || !layout || !view) return;
      const wanted = press.surface - (event.clientY - press.fromY) / view.scale;
      last = { board: press.board, surface: boardHeight(layout, press.board, wanted) };
      setHand(last);
    };
    const up = (event: PointerEvent) => {
      if (event.pointerId !== press.pointer) return;
      stop();
      if (last && last.surface !== press.surface) latest.current.onDrop(last);
    };
    const cancel = (event: PointerEvent) => event.pointerId === press.pointer && stop();
    const key = (event: KeyboardEvent) => {
      if (event.key !== 'Escape') return;
      event.stopPropagation();
      stop();
    };
    window.addEventListener('pointermove', move);
    window.addEventListener('pointerup', up);
    window.addEventListener('pointercancel', cancel);
    window.addEventListener('keydown', key, true);
    return () => {
      window.removeEventListener('pointermove', move);
      window.removeEventListener('pointerup', up);
      window.removeEventListener('pointercancel', cancel);
      window.removeEventListener('keydown', key, true);
    };
  }, [press]);

  function start(board: string, surface: number, event: PointerEvent): void {
    if (event.button > 0) return;
    setPress({ pointer: event.pointerId, board, fromY: event.clientY, surface });
  }

  return { hand, start };
}
