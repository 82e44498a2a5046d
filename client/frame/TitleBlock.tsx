import { sayArea } from '#model/units/sayLength.ts';
import { useArrangement, useClassroom, useKept, useScene, useUnits, useViewOf } from '../session/hooks.ts';
import type { SheetName } from '../session/types.ts';
import { nameOfArrangement } from '../text/nameOfArrangement.ts';
import { countOf, sayAges } from '../text/sayAges.ts';
import { sayKept } from '../text/sayKept.ts';
import { TextLink } from '../ui/TextLink.tsx';
import { CheckCounts } from './CheckCounts.tsx';
import { useFrameDialogs } from './frameDialogs.ts';
import { PeopleLine } from './PeopleLine.tsx';

export const sheetOrder: readonly SheetName[] = ['room', 'materials', 'places', 'move-day'];

/** What every drawing sheet carries in its lower right corner. In pencil while the sheet is blank. */
export function TitleBlock() {
  const classroom = useClassroom();
  const scene = useScene();
  const arrangement = useArrangement();
  const units = useUnits();
  const sheet = useViewOf('sheet');
  const dialogs = useFrameDialogs();
  const kept = sayKept(useKept());
  const enrolled = countOf(classroom.children.groups);
  const facts = [sayAges(classroom.children.groups), `${enrolled} enrolled`, `${sayArea(scene.room.area, units)} inside`];
  const isBlank = arrangement.pieces.length === 0 && classroom.room.openings.length === 0;

  return (
    <section className={isBlank ? 'title-block pencil' : 'title-block'} aria-label="Title block">
      <div className="tb-top">
        <div>
          <span className="label">Class</span>
          <h1 className="tb-class" title={classroom.name}>
            {classroom.name || 'Class without a name'}
          </h1>
          <p>{facts.filter(Boolean).join(' · ')}</p>
          <TextLink onPress={() => dialogs.open('class')}>The class: children, adults, rules</TextLink>
        </div>
        <div>
          <span className="label">Sheet</span>
          <p className="tb-sheet">
            <b>{sheetOrder.indexOf(sheet) + 1}</b> of {sheetOrder.length}
          </p>
        </div>
      </div>
      <div className="tb-left">
        <span className="label">Arrangement</span>
        <p className="tb-strong">{nameOfArrangement(arrangement)}</p>
      </div>
      <div>
        <span className="label">Checks of the room</span>
        <CheckCounts />
      </div>
      <div className="tb-left">
        <span className="label">Kept</span>
        <p className={kept.isTrouble ? 'kept trouble-text' : 'kept'}>
          {kept.isWell && <TickMark />} {kept.text}
        </p>
      </div>
      <div>
        <span className="label">At this sheet</span>
        <PeopleLine />
      </div>
    </section>
  );
}

export function TickMark() {
  return (
    <svg className="tick-mark" width="12" height="12" viewBox="0 0 12 12" aria-hidden="true" focusable="false">
      <path d="M1.5 6.5 4.5 9.5 10.5 2" fill="none" stroke="var(--note)" strokeWidth="1.6" />
    </svg>
  );
}
