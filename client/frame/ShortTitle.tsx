import { useClassroom, useKept } from '../session/hooks.ts';
import { countOf, sayAges } from '../text/sayAges.ts';
import { sayKept } from '../text/sayKept.ts';
import { TextLink } from '../ui/TextLink.tsx';
import { useFrameDialogs } from './frameDialogs.ts';
import { PeopleLine } from './PeopleLine.tsx';
import { TickMark } from './TitleBlock.tsx';

/** The title block in short, where the drawing needs the room. */
export function ShortTitle() {
  const classroom = useClassroom();
  const dialogs = useFrameDialogs();
  const groups = classroom.children.groups;
  return (
    <div className="short-title-words">
      <h1>{classroom.name || 'Class without a name'}</h1>
      <p>
        {[sayAges(groups), `${countOf(groups)} enrolled`].filter(Boolean).join(' · ')}{' '}
        <TextLink onPress={() => dialogs.open('class')}>The class</TextLink>
      </p>
    </div>
  );
}

/** Who is here and where the work is kept, at the end of the strip. */
export function ShortState() {
  const kept = sayKept(useKept());
  return (
    <div className="short-state">
      <PeopleLine />
      <p className={kept.isTrouble ? 'trouble-text' : undefined}>
        {kept.isWell && <TickMark />} {kept.text}
      </p>
    </div>
  );
}
