/** What is said politely: heard by a screen reader, seen in the status line. One for the page. */
export interface Announcement {
  readonly text: string;
  /** Rises each time, so that the same words are said again. */
  readonly sequence: number;
  /** It stands on the page already: it is heard, and not shown a second time. */
  readonly isOnPage: boolean;
}

let latest: Announcement = { text: '', sequence: 0, isOnPage: false };
const listeners = new Set<() => void>();

export const announcer = {
  say(text: string, isOnPage = false): void {
    latest = { text, sequence: latest.sequence + 1, isOnPage };
    for (const listener of listeners) listener();
  },
  latest: (): Announcement => latest,
  subscribe(listener: () => void): () => void {
    listeners.add(listener);
    return () => listeners.delete(listener);
  },
};
