import { fetchWhenQuiet } from './whenQuiet.ts';

/** The service worker that lets the page open with the server gone. A new version waits until it is asked for. */
type State = 'none' | 'waiting';

let state: State = 'none';
const listeners = new Set<() => void>();
let activate: (() => Promise<void>) | null = null;

function change(next: State): void {
  state = next;
  for (const listener of listeners) listener();
}

export const pageUpdate = {
  state: (): State => state,
  subscribe(listener: () => void): () => void {
    listeners.add(listener);
    return () => listeners.delete(listener);
  },
  /** Fetches the whole page to keep it, so not while the drawing is still on its way. */
  begin(): void {
    fetchWhenQuiet(async () => {
      const { registerSW } = await import('virtual:pwa-register');
      const update = registerSW({ onNeedRefresh: () => change('waiting') });
      activate = () => update(true);
    });
  },
  take(): void {
    void activate?.();
  },
  later(): void {
    change('none');
  },
};
