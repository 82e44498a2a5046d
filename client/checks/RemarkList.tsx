import { shelfWords } from '../front/shelfNames.ts';
import { useClassroom, useScene, useSession } from '../session/hooks.ts';
import { MayChange } from '../session/MayChange.tsx';
import { capital } from '../text/sayList.ts';
import { TextLink } from '../ui/TextLink.tsx';
import { keepInSight } from './keepInSight.ts';

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
        {notes.map((note, i) => (
          <li key={note.id} className="finding">
            <p>
              <b>{i + 1}</b> {note.on !== null && scene.bodyById.has(note.on) && `${capital(shelfWords(scene, note.on))}: `}
              {note.text}
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
                    session.announce(`Remark ${i + 1} is ${note.done ? 'open again' : 'done'}.`);
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
  return (
    <p className="left-line">
      <TextLink onPress={showRemarks}>{open === 1 ? '1 remark on the plan' : `${open} remarks on the plan`}</TextLink>
    </p>
  );
}

function showRemarks(): void {
  const title = document.getElementById('remarks-title');
  title?.focus({ preventScroll: true });
  if (title) keepInSight(title.closest('section') ?? title);
}
