import { Suspense, useEffect, useRef, useState } from 'react';
import { useAnnouncement, useCheckTrouble, useConflicts, useKept, useNeedsRepair, useViewOf } from '../session/hooks.ts';
import { sayKept } from '../text/sayKept.ts';
import { late } from '../ui/late.tsx';
import { useFrameDialogs } from './frameDialogs.ts';
import { TickMark } from './TitleBlock.tsx';
import { useSeesTitleBlock } from './useLayout.ts';

const ConflictNotice = late(() => import('../states/ConflictNotice.tsx').then((m) => m.ConflictNotice));
const RepairNotice = late(() => import('../states/RepairNotice.tsx').then((m) => m.RepairNotice));

/** How long a said thing stays in sight (ms). */
const STAYS = 8000;
/** Where more than a line or two of what is said lies on some of the sheet (frame.css). */
const LIES_ON_SHEET = '(max-width: 899px)';

/** What was just done, said politely; where the work is kept, unless the title block says so; and troubles, which stay until they are over. */
export function StatusLine() {
  const announcement = useAnnouncement();
  const checkTrouble = useCheckTrouble();
  const kept = sayKept(useKept());
  const repair = useNeedsRepair();
  const conflicts = useConflicts();
  const seesTitleBlock = useSeesTitleBlock();
  const [gone, setGone] = useState(0);

  useEffect(() => {
    const go = () => setGone(announcement.sequence);
    const goFromFinger = ({ pointerType }: PointerEvent) => pointerType !== 'mouse' && matchMedia(LIES_ON_SHEET).matches && go();
    const timer = setTimeout(go, STAYS);
    addEventListener('pointerdown', goFromFinger, true);
    return () => {
      clearTimeout(timer);
      removeEventListener('pointerdown', goFromFinger, true);
    };
  }, [announcement.sequence]);

  // What was said on one sheet is not about the next, nor about a dialog that opens, unless going there was what was said.
  const sheet = useViewOf('sheet');
  const { shown, page } = useFrameDialogs();
  const dialog = shown ?? page;
  const before = useRef({ sheet, dialog, sequence: announcement.sequence });
  useEffect(() => {
    const { sequence } = announcement;
    const was = before.current;
    const isElsewhere = was.sheet !== sheet || (dialog !== null && was.dialog !== dialog);
    if (isElsewhere && was.sequence === sequence) setGone(sequence);
    before.current = { sheet, dialog, sequence };
  }, [sheet, dialog, announcement]);

  const said = announcement.sequence > gone ? announcement.text : '';
  return (
    <>
      {/* A no-break space now and then makes a screen reader say the same words again. */}
      <p className={said === '' ? 'said empty' : announcement.isOnPage ? 'said only-heard' : 'said'} role="status">
        {said}
        {said && announcement.sequence % 2 === 1 ? '\u00a0' : ''}
      </p>
      {!seesTitleBlock && (
        <p className="kept-line">
          {kept.isWell && <TickMark />} {kept.text}
        </p>
      )}
      {checkTrouble && (
        <p className="status-line trouble" role="alert">
          {checkTrouble}
        </p>
      )}
      {kept.isTrouble && (
        <p className="status-line trouble" role="alert">
          Careful: {kept.text}. Save a file to be safe.
        </p>
      )}
      <Suspense fallback={null}>
        {conflicts.length > 0 && <ConflictNotice conflicts={conflicts} />}
        {repair.length > 0 && <RepairNotice problems={repair} />}
      </Suspense>
    </>
  );
}
