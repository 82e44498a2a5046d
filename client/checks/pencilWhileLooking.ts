import type { Finding } from '#model/findings/finding.ts';
import { showPencil } from '../plan/planStore.ts';
import type { Session } from '../session/types.ts';

/** While "Do it" is pointed at or has focus, the plan shows in pencil what it would do. */
export function pencilWhileLooking(session: Session, { fix }: Finding) {
  const show = (): void => showPencil(session, fix?.edits ?? null);
  const hide = (): void => showPencil(session, null);
  return { onHoverStart: show, onHoverEnd: hide, onFocus: show, onBlur: hide };
}
