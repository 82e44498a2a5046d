import { labelParts } from '#model/findings/edit.ts';
import type { Finding } from '#model/findings/finding.ts';
import { showPencil } from '../plan/planStore.ts';
import type { Session } from '../session/types.ts';

/** Does what a finding proposes: one step, which "Take back" undoes. */
export function doFix(session: Session, finding: Finding): boolean {
  if (!finding.fix) return false;
  showPencil(session, null);
  const isDone = session.commands.applyEdits(session.arrangement().id, finding.fix.edits);
  session.announce(
    isDone
      ? `Done: ${labelParts(finding.fix.label).does.replace(/^Do it:\s*/, '')}. Take back undoes it.`
      : 'That could not be done: what it would change is gone. The checks are looking again.',
  );
  if (isDone && session.view().finding === finding.key) session.setView({ finding: null });
  return isDone;
}
