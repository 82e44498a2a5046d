import { type RefObject, useEffect, useRef, useState } from 'react';
import type { FrontLayout, FrontTray } from './frontLayout.ts';
import type { FrontView } from './frontView.ts';
import { type TrayDrop, trayDrop } from './trayDrop.ts';

/** px a finger may tremble before a press becomes a drag; px within which a tray catches */
const TREMBLE = 4;
const CATCH_PX = 9;

export interface TrayInHand {
  readonly tray: FrontTray;
  /** px of its left edge and base on the drawing */
  readonly x: number;
  readonly y: number;
  readonly drop: TrayDrop | null;
  /** The name of another place it is held over: "table", or "piece/side" of another shelf. */
  readonly over: string | null;
}

interface Wiring {
  readonly box: RefObject<HTMLElement | null>;
  readonly layout: FrontLayout | null;
  readonly view: FrontView | null;
  readonly gap: number;
  readonly onDrop: (hand: TrayInHand) => void;
}

interface Press {
  readonly pointer: number;
  readonly tray: FrontTray;
  readonly from: { x: number; y: number };
  /** px from the tray's left edge and base to the finger */
  readonly grip: { x: number; y: number };
  isDragging: boolean;
}

/** Follows a pressed tray to where it is let go. Nothing is written before that; Esc puts it back. */
export function useTrayDrag(wiring: Wiring) {
  const latest = useRef(wiring);
  latest.current = wiring;
  const [press, setPress] = useState<Press | null>(null);
  const [hand, setHand] = useState<TrayInHand | null>(null);

  useEffect(() => {
    if (!press) return;
    let last: TrayInHand | null = null;
    let frame = 0;
    const stop = () => {
      cancelAnimationFrame(frame);
      setPress(null);
      setHand(null);
    };
    const move = (event: PointerEvent) => {
      if (event.pointerId !== press.pointer) return;
      if (!press.isDragging && Math.hypot(event.clientX - press.from.x, event.clientY - press.from.y) < TREMBLE) return;
      press.isDragging = true;
      last = handAt(event, press, latest.current);
      cancelAnimationFrame(frame);
      frame = requestAnimationFrame(() => setHand(last));
    };
    const up = (event: PointerEvent) => {
      if (event.pointerId !== press.pointer) return;
      const dropped = press.isDragging ? handAt(event, press, latest.current) : null;
      stop();
      if (dropped) latest.current.onDrop(dropped);
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
      cancelAnimationFrame(frame);
      window.removeEventListener('pointermove', move);
      window.removeEventListener('pointerup', up);
      window.removeEventListener('pointercancel', cancel);
      window.removeEventListener('keydown', key, true);
    };
  }, [press]);

  function start(tray: FrontTray, event: PointerEvent, at: { x: number; y: number }): void {
    const corner = latest.current.box.current?.getBoundingClientRect();
    if (!corner || event.button > 0) return;
    setPress({
      pointer: event.pointerId,
      tray,
      from: { x: event.clientX, y: event.clientY },
      grip: { x: event.clientX - corner.left - at.x, y: event.clientY - corner.top - at.y },
      isDragging: false,
    });
  }

  return { hand, start };
}

function handAt(event: PointerEvent, press: Press, { box, layout, view, gap }: Wiring): TrayInHand | null {
  const corner = box.current?.getBoundingClientRect();
  if (!corner || !layout || !view) return null;
  const x = event.clientX - corner.left - press.grip.x;
  const y = event.clientY - corner.top - press.grip.y;
  const over = placeUnder(event);
  const drop = over === null ? trayDrop(layout, press.tray, view.fromX(x), view.fromY(y), gap, CATCH_PX / view.scale) : null;
  return { tray: press.tray, x, y, drop, over };
}

function placeUnder(event: PointerEvent): string | null {
  const under = document.elementFromPoint(event.clientX, event.clientY);
  return under?.closest('[data-drop]')?.getAttribute('data-drop') ?? null;
}
