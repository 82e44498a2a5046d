import { numberedRemarks, remarkWords } from '../plan/remarks.ts';
import { useClassroom, useScene, useSession } from '../session/hooks.ts';
import { MayChange } from '../session/MayChange.tsx';
import { TextLink } from '../ui/TextLink.tsx';
import { WayDown } from './WayDown.tsx';

/** What people wrote on the plan, by the numbers it bears there; what is done stays to be read. */
export function RemarkList() {
  const session = useSession();
  const scene = useScene();
  const { notes } = useClassroom();
  return (
    <section aria-labelledby="remarks-title">
      <h3 className="question" id="remarks-title" tabIndex={-1}>
        Remarks on the plan
      </h3>
      <ul>
        {numberedRemarks(notes).map(({ note, number }) => (
          <li key={note.id} className="finding">
            <p>
              <b>{number}</b> {remarkWords(note, scene)}
            </p>
            <p className="aside">
              {note.by ? `by ${note.by}` : 'by somebody without a name'}
              {note.done && ', done'}
            </p>
            <MayChange>
              <div className="verbs">
                <TextLink
                  aria-label={`${note.done ? 'Not done yet' : 'Done'}: ${note.text}`}
                  onPress={() => {
                    session.commands.changeRemark(note.id, { done: !note.done });
                    session.announce(`Remark ${number} is ${note.done ? 'open again' : 'done'}.`);
                  }}
                >
                  {note.done ? 'Not done yet' : 'Done'}
                </TextLink>
              </div>
            </MayChange>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** How many are open, and the way down to them. */
export function RemarkLine() {
  const open = useClassroom().notes.filter((note) => !note.done).length;
  if (open === 0) return null;
  return <WayDown to="remarks-title">{open === 1 ? '1 remark on the plan' : `${open} remarks on the plan`}</WayDown>;
}
