import { initialsOf, type PersonHere } from '#model/document/presence.ts';
import type { Person, View } from './types.ts';

const UNNAMED = 'somebody';

/** The id of the thing that colleagues see held: what is dragged, else what is chosen; null: nothing that can be held. */
export function heldIn({ preview, chosen }: Pick<View, 'preview' | 'chosen'>): string | null {
  if (preview) return preview.piece;
  // A wall goes by its corner's id, so holding either would show as holding both.
  if (!chosen || chosen.kind === 'wall' || chosen.kind === 'corner') return null;
  return chosen.id;
}

/**
 * A colleague as the sheets show them; one who has not said who it is stands as "somebody". What they hold in another
 * arrangement than the shown one is no matter of this one.
 */
export function personOf(here: PersonHere, shown: string | null = null): Person {
  const { clientId, name, initials, edge, isMe, sheet, arrangement } = here;
  const elsewhere = shown === null || isMe || arrangement === shown ? null : arrangement;
  const [holds, preview] = elsewhere === null ? [here.holds, here.preview] : [null, null];
  return {
    clientId,
    name,
    initials: isMe ? initials : initials || initialsOf(name) || UNNAMED,
    edge,
    isMe,
    sheet,
    elsewhere,
    holds,
    preview,
  };
}
