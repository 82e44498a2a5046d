import { useEffect } from 'react';
import { useSession } from '../session/hooks.ts';
import { doAgain, takeBack } from './takeBack.ts';

/** Ctrl+Z takes back your own last step, Ctrl+Shift+Z or Ctrl+Y does it again; typing in a field keeps its own. */
export function useUndoKeys(): void {
  const session = useSession();
  useEffect(() => {
    function onKey(event: KeyboardEvent): void {
      if (!(event.ctrlKey || event.metaKey) || event.altKey || isTyping(event.target)) return;
      const key = event.key.toLowerCase();
      if (key !== 'z' && key !== 'y') return;
      event.preventDefault();
      if (key === 'y' || event.shiftKey) doAgain(session);
      else takeBack(session);
    }
    addEventListener('keydown', onKey);
    return () => removeEventListener('keydown', onKey);
  }, [session]);
}

function isTyping(target: EventTarget | null): boolean {
  if (!(target instanceof HTMLElement)) return false;
  return (
    target.isContentEditable || target instanceof HTMLTextAreaElement || (target instanceof HTMLInputElement && target.type !== 'checkbox')
  );
}
