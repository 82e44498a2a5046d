import type { Report } from '#model/analysis/report.ts';
import { buildScene } from '#model/scene/build.ts';
import type { Scene } from '#model/scene/types.ts';
import type { Arrangement, Classroom } from '#model/schema/types.ts';
import type { Session } from './types.ts';

/** The session as it stood when the thing in hand was taken up; the session itself while nothing is dragged. */
export interface Resting {
  classroom(): Classroom;
  arrangement(): Arrangement;
  scene(): Scene;
  report(): Report | null;
}

interface Moment {
  readonly classroom: Classroom;
  readonly arrangement: Arrangement;
  readonly report: Report | null;
}

const known = new WeakMap<Session, Resting>();

/** For whatever does not hang on where a thing is just being dragged: it has nothing to draw again until the thing is let go. */
export function restingOf(session: Session): Resting {
  const before = known.get(session);
  if (before) return before;
  const made = createResting(session);
  known.set(session, made);
  return made;
}

/** A thing, or a wall, is under somebody's finger here. */
export function isDragging(session: Session): boolean {
  const { preview, draft } = session.view();
  return preview !== null || draft !== null;
}

function createResting(session: Session): Resting {
  let held: Moment | null = null;
  let last: { readonly classroom: Classroom; readonly arrangement: string; readonly value: Scene } | null = null;

  function moment(): Moment {
    const isMoving = isDragging(session);
    if (isMoving && held) return held;
    const now = { classroom: session.classroom(), arrangement: session.arrangement(), report: session.report() };
    held = isMoving ? now : null;
    return now;
  }

  return {
    classroom: () => moment().classroom,
    arrangement: () => moment().arrangement,
    report: () => moment().report,
    scene: () => {
      const { classroom, arrangement } = moment();
      if (last?.classroom === classroom && last.arrangement === arrangement.id) return last.value;
      const value = held ? buildScene(classroom, arrangement.id) : session.scene();
      last = { classroom, arrangement: arrangement.id, value };
      return value;
    },
  };
}
