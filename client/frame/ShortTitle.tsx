import { useClassroom } from '../session/hooks.ts';
import { countOf, sayAges } from '../text/sayAges.ts';
import { TextLink } from '../ui/TextLink.tsx';
import { useFrameDialogs } from './frameDialogs.ts';
import { PeopleLine } from './PeopleLine.tsx';

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

/** Who is here, at the end of the strip. Where the work is kept stands below the sheet (StatusLine). */
export function ShortState() {
  return (
    <div className="short-state">
      <PeopleLine />
    </div>
  );
}
