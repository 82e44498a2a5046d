import { useEffect } from 'react';
import { conflictsOf } from '#client/session/conflicts.ts';
import type { Session } from '#client/session/types.ts';
import { matsLying } from './matsLying.ts';
import { fitWholeRoom, type LayerName, type PlanModel } from './planModel.ts';

/** What each canvas is drawn from. A canvas is drawn again only when one of these is another object. */
function ingredients(session: Session): Readonly<Record<LayerName, readonly unknown[]>> {
  const classroom = session.classroom();
  const arrangement = session.arrangement();
  const view = session.view();
  const laid = view.laid === null ? null : classroom.arrangements.find(({ id }) => id === view.laid)?.pieces;
  const rugs = arrangement.pieces.filter(({ kind }) => kind === 'rug');
  return {
    sheet: [classroom.room, classroom.display],
    marks: [
      session.report(),
      // Which of them are left out: what is put on a mat takes it off at once.
      matsLying(session.report(), arrangement.pieces)
        .map(({ number }) => number)
        .join(),
      view.finding,
      view.chosen === null,
      rugs.length,
      ...rugs,
      conflictsOf(session).list(),
    ],
    things: [
      arrangement.pieces,
      arrangement.placements,
      classroom.room.fixtures,
      classroom.materials,
      classroom.display,
      laid,
      conflictsOf(session).list(),
    ],
    checks: [
      arrangement.pieces,
      arrangement.placements,
      session.report(),
      view.finding,
      classroom.room,
      classroom.materials,
      classroom.display,
      laid,
      conflictsOf(session).list(),
    ],
    over: [
      // The handles of what is chosen keep clear of the place that is looked at.
      view.finding === null ? null : session.report(),
      view.finding,
      view.chosen,
      view.alsoChosen,
      arrangement.pieces,
      arrangement.placements,
      classroom.room,
      classroom.notes,
      session.people(),
      laid,
    ],
  };
}

/** Draws again what changed, without React in between. */
export function useRedraw(model: PlanModel): void {
  useEffect(() => {
    const { session, store } = model;
    let before = ingredients(session);
    let { wholeRoom: fitted, pointed } = store.state();
    const onSession = (): void => {
      const now = ingredients(session);
      const was = before;
      before = now;
      const changed = (Object.keys(now) as LayerName[]).filter((name) => now[name].some((value, i) => value !== was[name][i]));
      // The things that rest look the same while one of them moves.
      const names = changed.filter((name) => (name !== 'things' && name !== 'checks') || !isOnlyMoved(model, was[name], now[name]));
      if (now.sheet[0] !== was.sheet[0] && !model.store.state().isMoved) fitWholeRoom(model);
      else if (names.length > 0) model.redraw(...names);
    };
    const onStore = (): void => {
      const now = store.state();
      if (now.wholeRoom !== fitted) {
        fitted = now.wholeRoom;
        fitWholeRoom(model);
      } else if (now.pointed === pointed) model.redraw('over');
      else model.redraw('checks', 'over');
      pointed = now.pointed;
    };
    const stops = [session.subscribe(onSession), store.subscribe(onStore)];
    return () => {
      for (const stop of stops) stop();
    };
  }, [model]);
}

function isOnlyMoved(model: PlanModel, was: readonly unknown[], now: readonly unknown[]): boolean {
  const ids = model.moving?.ids;
  if (!ids || now.slice(1).some((value, i) => value !== was[i + 1])) return false;
  const before = was[0] as readonly { id: string }[];
  const after = now[0] as readonly { id: string }[];
  return before.length === after.length && after.every((piece, i) => piece === before[i] || ids.has(piece.id));
}
