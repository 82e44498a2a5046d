import type { Session } from './types.ts';

/** Tells when one of the grounds is another object than it was when they were last taken. Ends when the classroom is closed. */
export function whileSame(session: Session, groundsOf: () => readonly unknown[], onOther: () => void, onClose: () => void) {
  let grounds: readonly unknown[] | null = null;
  const unsubscribe = session.subscribe(() => {
    if (grounds === null) return;
    const now = groundsOf();
    if (now.every((value, i) => value === grounds?.[i])) return;
    grounds = null;
    onOther();
  });
  // A closed classroom asks for nothing more.
  session.document.doc.on('destroy', () => {
    unsubscribe();
    onClose();
  });
  return {
    take(): void {
      grounds = groundsOf();
    },
    letGo(): void {
      grounds = null;
    },
  };
}
