import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { isSimple } from '#model/geometry/polygon.ts';
import type { Room } from '#model/schema/types.ts';
import type { LengthUnits } from '#model/units/sayLength.ts';
import { Button } from '../ui/Button.tsx';
import { Choice } from '../ui/Choice.tsx';
import { Dialog } from '../ui/Dialog.tsx';
import { TextLink } from '../ui/TextLink.tsx';
import { DiagonalRows } from './DiagonalRows.tsx';
import { type Draft, draftOf, emptyDraft, isUntouched } from './draft.ts';
import { asideOf, keepDraft, readKeptDraft } from './keptDraft.ts';
import { type LaidRoom, laidRoom, onSheet } from './laidRoom.ts';
import { sayTrouble, sayUsual, sayWalk } from './saySurvey.ts';
import { FixtureRows, OpeningRows } from './ThingRows.tsx';
import { WalkPicture } from './WalkPicture.tsx';
import { WallRows } from './WallRows.tsx';
import { hasToSpread, isByDiagonals, isMistake, layoutOf, type Walk, walkOf } from './walk.ts';
import '../styles/survey.css';

const partNames = [
  { value: 'walls', text: 'Walls' },
  { value: 'diagonals', text: 'Diagonals' },
  { value: 'openings', text: 'Doors, windows' },
  { value: 'fixtures', text: 'In the room' },
] as const;
type Part = (typeof partNames)[number]['value'];

interface Props {
  /** The room that is on the sheet, or holds its place. */
  readonly room: Room;
  readonly units: LengthUnits;
  /** Under which the walk is kept on this device until it is put on the sheet. */
  readonly keptAs: string;
  /** The walls of the room only hold its place: the walk begins empty. */
  readonly isFresh: boolean;
  /** What no longer fits in the room as it would be laid out, in words. */
  readonly misfitsOf: (laid: LaidRoom) => readonly string[];
  readonly onPut: (laid: LaidRoom, misfits: readonly string[]) => void;
  readonly onClose: () => void;
}

/** Walk round the room with the tape and type it as it is measured. Nothing changes until it is put on the sheet. */
export function WalkDialog({ room, units, keptAs, isFresh, misfitsOf, onPut, onClose }: Props) {
  const [isFromBefore, setFromBefore] = useState(() => readKeptDraft(keptAs) !== null);
  const [draft, setDraft] = useState<Draft>(() => readKeptDraft(keptAs) ?? (isFresh ? emptyDraft() : draftOf(room)));
  /** The walk that another one took the place of: the way back. */
  const [aside, setAside] = useState<Draft | null>(() => readKeptDraft(asideOf(keptAs)));
  const [part, setPart] = useState<Part>('walls');
  const [current, setCurrent] = useState<string | null>(draft.walls[0]?.corner ?? null);
  const latest = useRef(draft);
  const foot = useRef<HTMLDivElement>(null);
  const rowsPart = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const begin = (): void => rowsPart.current?.querySelector<HTMLInputElement>('input[type="text"]')?.focus();
    begin();
    // A menu that closes takes the focus back a moment later.
    const later = setTimeout(() => !rowsPart.current?.contains(document.activeElement) && begin(), 80);
    return () => clearTimeout(later);
  }, []);

  const change = useCallback(
    (make: (draft: Draft) => Draft): Draft => {
      const next = make(latest.current);
      if (next === latest.current) return next;
      latest.current = next;
      setDraft(next);
      keepDraft(keptAs, isUntouched(next, isFresh ? null : room) ? null : next);
      return next;
    },
    [keptAs, isFresh, room],
  );
  /** Another walk in the place of this one, which is laid aside: nothing typed is lost by a slip. */
  function beginAnew(next: Draft) {
    const before = latest.current;
    const isEmpty = before.walls.every(({ drawn }) => drawn === null) && isUntouched(before, null);
    const isTyped = !isEmpty && !isUntouched(before, isFresh ? null : room);
    setAside(isTyped ? before : null);
    keepDraft(asideOf(keptAs), isTyped ? before : null);
    change(() => next);
    setFromBefore(false);
    setCurrent(next.walls[0]?.corner ?? null);
    setPart('walls');
  }

  const walk = useMemo(() => walkOf(draft), [draft]);
  const layout = layoutOf(walk, draft.isSpread);
  const isCrossed = layout !== null && !isSimple(layout);
  const laid = useMemo(() => (isCrossed ? null : laidRoom(room, draft, walk)), [room, draft, walk, isCrossed]);
  const misfits = useMemo(() => (laid ? misfitsOf(laid) : []), [laid, misfitsOf]);
  const points = useMemo(
    () => onSheet(room, walk, draft.isSpread && walk.spread ? walk.spread : (layout ?? walk.chain)),
    [room, walk, layout, draft.isSpread],
  );
  const chain = useMemo(() => (draft.isSpread ? points : onSheet(room, walk, walk.chain)), [room, walk, points, draft.isSpread]);
  const heading = chain[0] && chain[1] ? (Math.atan2(chain[1].y - chain[0].y, chain[1].x - chain[0].x) * 180) / Math.PI : 0;
  const trouble = sayTrouble(walk, units, draft.walls.length);
  const maySpread = hasToSpread(walk);

  function put() {
    if (!laid) return;
    keepDraft(keptAs, null);
    keepDraft(asideOf(keptAs), null);
    onPut(laid, misfits);
  }

  /** Pressed in the picture: what is added next comes to that wall, and among the walls the keys go to its row. */
  function chooseWall(corner: string) {
    setCurrent(corner);
    const row = [...(rowsPart.current?.querySelectorAll<HTMLElement>('tr[data-wall]') ?? [])].find(
      ({ dataset }) => dataset.wall === corner,
    );
    row?.querySelector('input')?.focus();
  }

  const rows = { draft, walk, units, current, onCurrent: setCurrent, onChange: change };
  return (
    <Dialog title="Measure the room" isOpen onClose={onClose} isWide>
      {isFromBefore && (
        <p className="walk-before">
          This is the walk you began before.{' '}
          <TextLink onPress={() => beginAnew(isFresh ? emptyDraft() : draftOf(room))}>
            {isFresh ? 'Begin with an empty walk' : 'Begin from the sheet instead'}
          </TextLink>
        </p>
      )}
      {aside && (
        <p className="walk-before">
          The walk you typed before is laid aside. <TextLink onPress={() => beginAnew(aside)}>Take it back</TextLink>
        </p>
      )}
      <div className="walk">
        <div ref={rowsPart} className="walk-rows">
          <Choice label="What is measured" isLabelShown={false} value={part} options={partNames} onChange={setPart} />
          {part === 'walls' && (
            <WallRows {...rows} onRound={() => foot.current?.querySelector<HTMLElement>('button:not(:disabled)')?.focus()} />
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
              hasCorners={part === 'diagonals' || draft.walls.some(isByDiagonals)}
              units={units}
              onWall={chooseWall}
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
        {maySpread && !draft.isSpread && (
          <Button isDisabled={isMistake(walk)} onPress={() => change((before) => ({ ...before, isSpread: true }))}>
            Spread it {walk.how === 'squares' ? 'by least squares' : 'over the walls'}
          </Button>
        )}
        {draft.isSpread && <Button onPress={() => change((before) => ({ ...before, isSpread: false }))}>Take the spread back</Button>}
        <Button kind="strong" isDisabled={!laid} onPress={put}>
          Put it on the sheet
        </Button>
        <TextLink onPress={onClose}>Leave it for now</TextLink>
        {!isFresh &&
          (draft.walls.some(({ drawn }) => drawn !== null) ? (
            <TextLink onPress={() => beginAnew(emptyDraft())}>Begin with an empty walk</TextLink>
          ) : (
            !isFromBefore && <TextLink onPress={() => beginAnew(draftOf(room))}>Begin from the sheet</TextLink>
          ))}
        <span className="aside">{sayFoot(maySpread, draft.isSpread, laid !== null, walk.how)}</span>
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
