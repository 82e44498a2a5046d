import type { Point } from '#model/geometry/vec.ts';
import type { PlanModel } from '../planModel.ts';

interface Held {
  /** Alt: nothing draws the thing, turns are free. */
  readonly isFree: boolean;
}

/** Something under a finger. Points in mm on the plan. */
export interface Drag {
  to(p: Point, held: Held): void;
  end(): void;
  /** It says itself what came of it. */
  readonly saysItself?: boolean;
  /** As if it had never been touched. */
  cancel(): void;
}

/** ms: the document is written no more often than this while something moves. */
export const WRITE_EVERY = 50;

/** Writes at most 20 times a second (`every` ms), and for certain at the end; all of it is one step to take back. */
export interface Writer {
  write(change: () => void): void;
  end(change: () => void): void;
  cancel(): void;
}

export function stepWriter(model: PlanModel, now: () => number = () => performance.now(), every = WRITE_EVERY): Writer {
  const { undo } = model.session;
  let last = Number.NEGATIVE_INFINITY;
  let hasWritten = false;
  let isOpen = false;
  const open = (): void => {
    if (isOpen) return;
    isOpen = true;
    undo.beginStep();
  };
  const close = (): void => {
    if (isOpen) undo.endStep();
    isOpen = false;
  };
  return {
    write(change) {
      if (now() - last < every) return;
      open();
      last = now();
      hasWritten = true;
      change();
    },
    end(change) {
      open();
      change();
      close();
    },
    cancel() {
      close();
      // The step holds nothing but this drag, so taking it back restores what stood before.
      if (hasWritten) undo.takeBack();
    },
  };
}

interface InHand {
  /** Draws it at p: sets `model.moving` and what the checks follow. @returns false: it stays where it is */
  readonly show: (p: Point, held: Held) => boolean;
  /** Writes how it stands now. */
  readonly write: () => void;
  /** ms between two writes, where not `WRITE_EVERY` */
  readonly every?: number;
}

/** Things in hand: drawn each frame, written now and then, and as one step to take back. */
export function inHand(model: PlanModel, { show, write, every }: InHand): Drag {
  const writer = stepWriter(model, undefined, every);
  const letGo = (): void => {
    model.moving = null;
    model.session.setView({ preview: null, draft: null });
    model.redraw('marks', 'things', 'checks', 'over');
  };
  return {
    to(p, held) {
      const isFirst = model.moving === null;
      if (!show(p, held)) return;
      model.redraw('over');
      if (isFirst) model.redraw('marks', 'things', 'checks');
      writer.write(write);
    },
    end() {
      writer.end(write);
      letGo();
    },
    cancel() {
      writer.cancel();
      letGo();
      // Nobody lets it go, so nobody says how it came to rest.
      if (model.store.state().rest !== '') model.store.set({ rest: '' });
    },
  };
}
