import { useCallback, useMemo, useRef, useState } from 'react';
import { isSimple } from '#model/geometry/polygon.ts';
import { length as longOf } from '#model/geometry/vec.ts';
import { planStoreOf } from '../plan/planStore.ts';
import { useClassroom, useSession, useUnits } from '../session/hooks.ts';
import { Button } from '../ui/Button.tsx';
import { Choice } from '../ui/Choice.tsx';
import { Dialog } from '../ui/Dialog.tsx';
import { TextLink } from '../ui/TextLink.tsx';
import { DiagonalRows } from './DiagonalRows.tsx';
import { type Draft, draftOf, emptyDraft, isUntouched } from './draft.ts';
import { keepDraft, readKeptDraft } from './keptDraft.ts';
import { laidRoom, onSheet } from './laidRoom.ts';
import { sayTrouble, sayUsual, sayWalk } from './saySurvey.ts';
import { FixtureRows, OpeningRows } from './ThingRows.tsx';
import { WalkPicture } from './WalkPicture.tsx';
import { WallRows } from './WallRows.tsx';
import { isMistake, layoutOf, type Walk, walkOf } from './walk.ts';
import { whatNoLongerFits, writeSurvey } from './writeSurvey.ts';
import '../styles/survey.css';

const partNames = [
  { value: 'walls', text: 'Walls' },
  { value: 'diagonals', text: 'Diagonals' },
  { value: 'openings', text: 'Doors, windows' },
  { value: 'fixtures', text: 'In the room' },
] as const;
type Part = (typeof partNames)[number]['value'];

interface Props {
  /** The walls on the sheet only hold its place: the walk begins empty. */
  readonly isFresh: boolean;
  readonly onClose: () => void;
}

/** Walk round the room with the tape and type it as it is measured. Nothing of the sheet changes until it is put there. */
export function SurveyDialog({ isFresh, onClose }: Props) {
  const session = useSession();
  const classroom = useClassroom();
  const units = useUnits();
  const { room } = classroom;
  const [isFromBefore, setFromBefore] = useState(() => readKeptDraft(session.id) !== null);
  const [draft, setDraft] = useState<Draft>(() => readKeptDraft(session.id) ?? (isFresh ? emptyDraft() : draftOf(room)));
  const [part, setPart] = useState<Part>('walls');
  const [current, setCurrent] = useState<string | null>(draft.walls[0]?.corner ?? null);
  const latest = useRef(draft);
  const foot = useRef<HTMLDivElement>(null);

  const change = useCallback(
    (make: (draft: Draft) => Draft): Draft => {
      const next = make(latest.current);
      if (next === latest.current) return next;
      latest.current = next;
      setDraft(next);
      keepDraft(session.id, isUntouched(next, isFresh ? null : room) ? null : next);
      return next;
    },
    [session.id, isFresh, room],
  );
  function beginAnew(next: Draft) {
    change(() => next);
    keepDraft(session.id, null);
    setFromBefore(false);
    setCurrent(next.walls[0]?.corner ?? null);
    setPart('walls');
  }

  const walk = useMemo(() => walkOf(draft), [draft]);
  const layout = layoutOf(walk, draft.isSpread);
  const isCrossed = layout !== null && !isSimple(layout);
  const laid = useMemo(() => (isCrossed ? null : laidRoom(room, draft, walk)), [room, draft, walk, isCrossed]);
  const misfits = useMemo(() => (laid ? whatNoLongerFits(classroom, session.arrangement().id, laid) : []), [classroom, laid, session]);
  const points = useMemo(
    () => onSheet(room, walk, draft.isSpread && walk.spread ? walk.spread : (layout ?? walk.chain)),
    [room, walk, layout, draft.isSpread],
  );
  const chain = useMemo(() => (draft.isSpread ? points : onSheet(room, walk, walk.chain)), [room, walk, points, draft.isSpread]);
  const heading = chain[0] && chain[1] ? (Math.atan2(chain[1].y - chain[0].y, chain[1].x - chain[0].x) * 180) / Math.PI : 0;
  const trouble = sayTrouble(walk, units);
  const isOpen = walk.how === 'squares' ? (walk.fit?.redundancy ?? 0) > 0 : walk.open !== null && longOf(walk.open) >= 1;

  function put() {
    if (!laid) return;
    writeSurvey(session, laid);
    keepDraft(session.id, null);
    const store = planStoreOf(session);
    store.set({ wholeRoom: store.state().wholeRoom + 1 });
    const also = misfits.length === 0 ? '' : ` Look at: ${misfits.join(' ')}`;
    session.announce(`The room stands as it was measured. Take back undoes it.${also}`);
    onClose();
  }

  const rows = { draft, walk, units, current, onChange: change };
  return (
    <Dialog title="Measure the room" isOpen onClose={onClose} isWide>
      {isFromBefore && (
        <p className="walk-before">
          This is the walk you began before.{' '}
          <TextLink onPress={() => beginAnew(isFresh ? emptyDraft() : draftOf(room))}>Begin from the sheet instead</TextLink>
        </p>
      )}
      <div className="walk">
        <div className="walk-rows">
          <Choice label="What is measured" isLabelShown={false} value={part} options={partNames} onChange={setPart} />
          {part === 'walls' && (
            <WallRows
              {...rows}
              onCurrent={setCurrent}
              onRound={() => foot.current?.querySelector<HTMLElement>('button:not(:disabled)')?.focus()}
            />
          )}
          {part === 'diagonals' && <DiagonalRows {...rows} />}
          {part === 'openings' && <OpeningRows {...rows} />}
          {part === 'fixtures' && <FixtureRows {...rows} />}
        </div>
        <div className="walk-beside">
          <div className="walk-keep">
            <WalkPicture
              draft={draft}
              walk={walk}
              points={draft.isSpread || !walk.isRound ? points : chain}
              isClosed={draft.isSpread || (layout !== null && !walk.isRound)}
              laid={laid?.room ?? null}
              current={current}
              units={units}
            />
            <p role="status" className="walk-said">
              <b>{draft.isSpread ? 'Spread: the walls meet.' : sayWalk(walk, units, heading)}</b>
            </p>
          </div>
          {trouble && <p className="trouble-text">{trouble}</p>}
          {isCrossed && <p className="trouble-text">These walls cross each other: look at the turns.</p>}
          {walk.isRound && <p className="aside">{sayUsual(units)}</p>}
          {misfits.length > 0 && (
            <div>
              <p>
                <b>Once the walls stand so:</b>
              </p>
              <ul className="walk-misfits">
                {misfits.map((words) => (
                  <li key={words}>{words}</li>
                ))}
              </ul>
            </div>
          )}
        </div>
      </div>
      <div ref={foot} className="verbs walk-foot">
        {walk.spread && isOpen && !draft.isSpread && (
          <Button isDisabled={isMistake(walk)} onPress={() => change((before) => ({ ...before, isSpread: true }))}>
            Spread it {walk.how === 'squares' ? 'by least squares' : 'over the walls'}
          </Button>
        )}
        {draft.isSpread && <Button onPress={() => change((before) => ({ ...before, isSpread: false }))}>Take the spread back</Button>}
        <Button kind="strong" isDisabled={!laid} onPress={put}>
          Put it on the sheet
        </Button>
        <TextLink onPress={onClose}>Leave it for now</TextLink>
        {draft.walls.some(({ drawn }) => drawn !== null) && (
          <TextLink onPress={() => beginAnew(emptyDraft())}>Begin with an empty walk</TextLink>
        )}
        <span className="aside">{sayFoot(walk.spread !== null && isOpen, draft.isSpread, laid !== null, walk.how)}</span>
      </div>
    </Dialog>
  );
}

function sayFoot(maySpread: boolean, isSpread: boolean, isLaid: boolean, how: Walk['how']): string {
  if (!isLaid) return 'What is typed is kept on this device until you put it on the sheet.';
  if (isSpread) return 'The lengths as taped are kept beside it.';
  if (!maySpread) return '';
  const rule = {
    squares: 'so that all the measurements change least',
    lengths: 'only lengths, in proportion along each direction; the corners stay square',
    compass: 'in proportion to the lengths (compass rule); that turns the walls a little',
  }[how];
  return `Each row says what spreading changes, ${rule}. Not spread, the last wall takes up the gap.`;
}
