import { useDeferredValue, useMemo, useState } from 'react';
import { pieceNumbers } from '#model/schema/pieceNumbers.ts';
import { type Day, dayOf } from '../moveDay/dayOf.ts';
import { pairOf } from '../moveDay/pairOf.ts';
import { useSteadyClassroom } from '../moveDay/steady.ts';
import { nameOfPiece } from '../plan/describe.ts';
import { piecesInOrder } from '../plan/items.ts';
import { useArrangement, useClassroom, useIsThinking, useRestingReport, useScene, useViewOf } from '../session/hooks.ts';
import { sayCount } from '../text/sayCount.ts';
import { isoToday } from '../text/sayDay.ts';
import { Button } from '../ui/Button.tsx';
import { Choice } from '../ui/Choice.tsx';
import { Dialog } from '../ui/Dialog.tsx';
import { Select } from '../ui/Select.tsx';
import { TextLink } from '../ui/TextLink.tsx';
import { Tick } from '../ui/Tick.tsx';
import { createMeasure } from './measureOnPaper.ts';
import { PagePaper } from './PagePaper.tsx';
import { pagesOf } from './pages.ts';
import type { PrintPage } from './pageTypes.ts';
import { paperNames, sayPaper } from './paper.ts';
import { keepPrintChoice, onlyMove, type PrintChoice, readPrintChoice } from './printChoice.ts';
import { openRemarks } from './remarkMarks.ts';
import { unseenOnPaper } from './unseenMarks.ts';
import '../styles/printOut.css';
import '../styles/print.css';

/** What to print, on what paper, and how it will look. */
export function PrintDialog({ onClose }: { onClose: () => void }) {
  const scene = useScene();
  const report = useRestingReport();
  const isThinking = useIsThinking();
  const frontOf = useViewOf('frontOf');
  const isFromMove = useViewOf('sheet') === 'move-day';
  const move = useMove();
  const { units } = scene.classroom.display;
  const shelves = useMemo(() => shelvesOf(scene), [scene]);
  const [choice, setChoice] = useState(() => {
    const kept = readPrintChoice(
      units,
      shelves.map(({ value }) => value),
    );
    return isFromMove && move ? onlyMove(kept) : kept;
  });
  const [isLarge, setLarge] = useState(false);
  const measure = useMemo(createMeasure, []);
  const today = isoToday();
  const wanted = useDeferredValue(choice);
  const pages = useMemo(
    () => pagesOf({ scene, report, choice: wanted, move, frontOf, measure, today }),
    [scene, report, wanted, move, frontOf, measure, today],
  );

  function change(part: Partial<PrintChoice>): void {
    const next = { ...choice, ...part };
    setChoice(next);
    keepPrintChoice(next);
  }

  return (
    <Dialog title="What to print" isOpen onClose={onClose} isWide isPrinted>
      <div className="print-tools">
        <WhatToPrint
          choice={choice}
          shelves={shelves}
          hasMove={move !== null}
          hasRemarks={openRemarks(scene).length > 0}
          hasUnseen={unseenOnPaper(scene, report).length > 0}
          onChange={change}
        />
        <Choice
          label="Paper"
          value={choice.paper}
          options={paperNames.map((name) => ({ value: name, text: sayPaper(name) }))}
          onChange={(paper) => change({ paper })}
        />
        <div className="verbs">
          <Button kind="strong" isDisabled={pages.length === 0 || wanted !== choice} onPress={() => print()}>
            Print
          </Button>
          <TextLink onPress={onClose}>Back to the sheet</TextLink>
          {pages.length > 0 && (
            <TextLink onPress={() => setLarge(!isLarge)}>{isLarge ? 'All pages, small' : 'Pages one by one, large'}</TextLink>
          )}
          <span role="status">
            {pages.length === 0 ? 'Nothing is chosen.' : `${sayCount(pages.length, 'page')} on ${sayPaper(wanted.paper)}`}
          </span>
        </div>
        {wanted.labels !== 'none' && !pages.some(({ what }) => what === 'Labels') && (
          <p>No tray stands on the shelves that were chosen: there are no label strips.</p>
        )}
        <p className="aside">
          {isThinking && 'Still looking … the checks may change. '}
          Drawn to scale: in the browser’s print window keep the scale at 100 % and leave “fit to page” off, then hold a ruler to the bar.
        </p>
      </div>
      <ol className={isLarge ? 'print-pages print-out large' : 'print-pages print-out'}>
        {pages.map((page, i) => (
          <li key={page.key} className={`print-page ${page.sheet.paper}-${page.sheet.isLying ? 'lying' : 'upright'}`}>
            <PagePaper page={page} measure={measure} label={sayPage(page, i, pages.length)} />
            <p className="aside">
              {i + 1} {sayPage(page, i, pages.length, true)}
            </p>
          </li>
        ))}
      </ol>
    </Dialog>
  );
}

interface WhatProps {
  readonly choice: PrintChoice;
  readonly shelves: readonly { value: string; text: string }[];
  /** There are some that could be printed. */
  readonly hasMove: boolean;
  readonly hasRemarks: boolean;
  readonly hasUnseen: boolean;
  readonly onChange: (part: Partial<PrintChoice>) => void;
}

function WhatToPrint({ choice, shelves, hasMove, hasRemarks, hasUnseen, onChange }: WhatProps) {
  const which = (all: string) => [{ value: 'none', text: 'none' }, { value: 'all', text: all }, ...shelves];
  return (
    <>
      <div className="print-ticks">
        {hasMove && (
          <Tick isTicked={choice.isMove} onChange={(isMove) => onChange({ isMove })}>
            Move day: plan, steps, crates
          </Tick>
        )}
        <Tick isTicked={choice.isRoom} onChange={(isRoom) => onChange({ isRoom })}>
          Room sheet
        </Tick>
        {choice.isRoom && (
          <>
            <Tick isTicked={choice.hasMarks} onChange={(hasMarks) => onChange({ hasMarks })}>
              Checks marked on the plan
            </Tick>
            {hasRemarks && (
              <Tick isTicked={choice.hasRemarks} onChange={(isOn) => onChange({ hasRemarks: isOn })}>
                Remarks
              </Tick>
            )}
            {hasUnseen && (
              <Tick isTicked={choice.hasUnseen} onChange={(isOn) => onChange({ hasUnseen: isOn })}>
                Floor that no adult sees
              </Tick>
            )}
          </>
        )}
        <Tick isTicked={choice.isChecks} onChange={(isChecks) => onChange({ isChecks })}>
          List of checks
        </Tick>
      </div>
      <div className="print-what">
        <Select label="Shelf fronts" value={choice.fronts} options={which('all fronts')} onChange={(fronts) => onChange({ fronts })} />
        {choice.fronts !== 'none' && (
          <Choice
            label="Fronts at"
            value={String(choice.frontScale) as '10' | '20'}
            options={[
              { value: '10', text: '1:10 if it fits' },
              { value: '20', text: '1:20' },
            ]}
            onChange={(scale) => onChange({ frontScale: scale === '20' ? 20 : 10 })}
          />
        )}
        <Select label="Label strips" value={choice.labels} options={which('of all shelves')} onChange={(labels) => onChange({ labels })} />
      </div>
    </>
  );
}

function shelvesOf(scene: ReturnType<typeof useScene>): { value: string; text: string }[] {
  const numbers = pieceNumbers(scene.classroom);
  const withSides = new Set(scene.sides.map(({ piece }) => piece.id));
  return piecesInOrder(scene.arrangement, scene.classroom)
    .filter(({ id }) => withSides.has(id))
    .map((piece) => ({
      value: piece.id,
      text: [nameOfPiece(piece, numbers), piece.name.replace(/^\s*shelf\s*\d*\s*/i, '')].filter(Boolean).join(' · '),
    }));
}

/** The move to the arrangement that is shown; null: there is none, or the two do not differ. */
function useMove(): Day | null {
  const now = useClassroom();
  const shown = useArrangement();
  const classroom = useSteadyClassroom(now);
  return useMemo(() => {
    const pair = pairOf(classroom, shown);
    const day = pair && dayOf(classroom, pair.from, pair.to, now.moveDay);
    return day && day.steps.length > 0 ? day : null;
  }, [classroom, shown, now.moveDay]);
}

/** "Room, 1:50", with its place among the others unless that is said already. */
function sayPage({ what, scale, note }: PrintPage, index: number, count: number, isShort = false): string {
  const said = [what, ...(scale === null ? [] : [`1:${scale}${note ? ` (${note})` : ''}`])].join(', ');
  return isShort ? said : `Page ${index + 1} of ${count}: ${said}`;
}
