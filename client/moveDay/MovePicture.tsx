import { type PointerEvent, useEffect, useMemo, useRef } from 'react';
import { distance } from '#model/geometry/vec.ts';
import { useBoxSize } from '../front/useBoxSize.ts';
import type { Pen } from '../plan/draw/pen.ts';
import { neatlineBounds } from '../plan/neatline.ts';
import type { MatPlace } from '../plan/reportParts.ts';
import { fitRoom } from '../plan/viewport.ts';
import { useUnits } from '../session/hooks.ts';
import type { Day } from './dayOf.ts';
import { drawMove, type NumberPlace } from './drawMove.ts';

/** px round the walls: neatline above and at the left, names of doors at the right */
const MARGINS = { top: 38, right: 56, bottom: 30, left: 40 };
/** px: what a finger catches of a number */
const CATCH = 22;

interface Props {
  readonly day: Day;
  readonly mats: readonly MatPlace[];
  readonly chosen: string | null;
  readonly onChoose: (step: string | null) => void;
  readonly label: string;
}

/** The plan of the day. The list beside it holds the same steps in words. */
export function MovePicture({ day, mats, chosen, onChoose, label }: Props) {
  const frame = useRef<HTMLDivElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const numbers = useRef<readonly NumberPlace[]>([]);
  const size = useBoxSize(frame);
  const units = useUnits();
  const { from } = day.plan;
  const view = useMemo(() => fitRoom(neatlineBounds(from.room.outline), size, MARGINS), [from, size]);
  const dense = globalThis.devicePixelRatio || 1;

  useEffect(() => {
    const ctx = canvas.current?.getContext('2d');
    if (!ctx || size.width === 0 || size.height === 0) return;
    ctx.setTransform(dense, 0, 0, dense, 0, 0);
    ctx.clearRect(0, 0, size.width, size.height);
    const pen: Pen = { ctx, view, units, isRightToLeft: from.classroom.display.readingDirection === 'rtl' };
    numbers.current = drawMove(pen, day, mats, chosen, size);
  }, [day, mats, chosen, size, view, units, from, dense]);

  function press(event: PointerEvent<HTMLCanvasElement>): void {
    const box = event.currentTarget.getBoundingClientRect();
    const p = { x: event.clientX - box.left, y: event.clientY - box.top };
    const near = [...numbers.current].sort((q, r) => distance(q.at, p) - distance(r.at, p))[0];
    onChoose(near && distance(near.at, p) <= CATCH ? near.step : null);
  }

  return (
    <div ref={frame} className="move-picture">
      <canvas
        ref={canvas}
        role="img"
        aria-label={label}
        width={Math.round(size.width * dense)}
        height={Math.round(size.height * dense)}
        style={{ width: size.width, height: size.height }}
        onPointerUp={press}
      />
    </div>
  );
}
