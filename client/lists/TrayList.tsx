import { Suspense, useMemo } from 'react';
import { trayGapOf } from '#model/measures/order/classOptions.ts';
import { frontLayout } from '../front/frontLayout.ts';
import { orderMoves } from '../front/orderMoves.ts';
import { sideName } from '../front/shelfNames.ts';
import { shownSide } from '../front/shownSide.ts';
import { useMayChange, useRestingReport, useScene, useSession, useUnits, useViewOf } from '../session/hooks.ts';
import { fetchWhenQuiet } from '../session/whenQuiet.ts';
import { sayCount } from '../text/sayCount.ts';
import { BoardEditor } from './BoardEditor.tsx';
import { BoardTable } from './BoardTable.tsx';
import { checksBySubject } from './trayChecks.ts';
import '../styles/trayList.css';
import { capital } from '../text/sayList.ts';
import { late } from '../ui/late.tsx';
import { oneStop } from '../ui/oneStop.ts';

const loadVerbs = () => import('./TrayVerbs.tsx');
const TrayVerbs = late(() => loadVerbs().then((m) => m.TrayVerbs));
fetchWhenQuiet(loadVerbs);

/** The trays of the shelf whose front is shown, board by board: the drawing in words, with the same verbs. */
export function TrayList() {
  const session = useSession();
  const scene = useScene();
  const frontOf = useViewOf('frontOf');
  const chosenThing = useViewOf('chosen');
  const report = useRestingReport();
  const units = useUnits();
  const mayChange = useMayChange();
  const side = shownSide(scene, frontOf);
  const gap = trayGapOf(scene.classroom);
  const layout = useMemo(() => (side ? frontLayout(side, gap) : null), [side, gap]);
  if (!side || !layout) {
    return (
      <section className="tray-list" aria-labelledby="trays-title">
        <div className="tray-head">
          <h2 id="trays-title">Trays</h2>
        </div>
        <p className="aside tray-empty">A shelf's trays are listed here once a shelf stands.</p>
      </section>
    );
  }
  const direction = scene.classroom.display.readingDirection;
  const moves = orderMoves(report, scene);
  const checks = checksBySubject(report);
  const chosen = chosenThing?.kind === 'tray' ? chosenThing.id : null;
  const count = layout.boards.reduce((sum, board) => sum + board.trays.length, 0);
  const boards = layout.boards.filter((board) => board.level !== null || board.trays.length > 0);
  const tray = layout.boards.flatMap((board) => board.trays).find((each) => each.id === chosen);
  const choose = (id: string): void =>
    session.setView({ chosen: { kind: 'tray', id }, material: id, frontOf: { piece: side.piece.id, side: side.side } });

  return (
    <section className="tray-list" aria-labelledby="trays-title">
      <div className="tray-head">
        <h2 id="trays-title">Trays on {sideName(scene, side)}</h2>
        <span className="aside">{sayCount(count, 'tray')}</span>
      </div>
      <div className="tray-scroll">
        <div ref={oneStop} className="tray-boards" data-direction={direction}>
          {boards.map((board) => (
            <BoardTable key={board.key} {...{ board, units, direction, moves, checks, chosen }} gap={gap} onChoose={choose} />
          ))}
          {boards.length === 0 && <p className="aside tray-empty">{capital(sideName(scene, side))} has no board yet. Add one below.</p>}
        </div>
        {mayChange && <BoardEditor {...{ side, layout }} />}
      </div>
      {tray && mayChange && (
        <Suspense fallback={null}>
          <TrayVerbs key={tray.id} {...{ scene, side, layout, tray, checks }} />
        </Suspense>
      )}
    </section>
  );
}
