import type { Draft } from './draft.ts';

const KEY = 'lowshelf.walk.';

/** A walk that was begun and not yet put on the sheet, kept on this device: a tablet that falls asleep loses nothing. */
export function readKeptDraft(id: string): Draft | null {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(KEY + id) ?? 'null');
    return isDraft(kept) ? kept : null;
  } catch {
    return null;
  }
}

export function keepDraft(id: string, draft: Draft | null): void {
  try {
    if (draft) localStorage.setItem(KEY + id, JSON.stringify(draft));
    else localStorage.removeItem(KEY + id);
  } catch {
    // Kept for as long as the page is open.
  }
}

/** Under which a walk is kept that another one took the place of. */
export const asideOf = (id: string): string => `${id}.aside`;

const parts = ['walls', 'diagonals', 'openings', 'fixtures'] as const;
function isDraft(value: unknown): value is Draft {
  if (typeof value !== 'object' || value === null) return false;
  const draft = value as Partial<Draft>;
  return (
    parts.every((part) => Array.isArray(draft[part])) &&
    (draft.walls?.length ?? 0) > 0 &&
    draft.walls?.every(({ corner }) => typeof corner === 'string') === true
  );
}
