import { z } from 'zod';
import { coordinate, degrees, id, text } from '../schema/primitives.ts';

const preview = z.object({ piece: id, x: coordinate, y: coordinate, rotation: degrees });

/** What a person lets the others see while they work. Never saved. */
const presence = z.object({
  name: text.max(80).default(''),
  initials: z.string().max(3).default(''),
  edge: z.enum(['solid', 'dashed', 'dotted']).default('solid'),
  sheet: z.enum(['room', 'materials', 'places', 'move-day']).nullable().default(null),
  /** id of the arrangement they look at */
  arrangement: id.nullable().default(null),
  /** id of the thing or material that is chosen or dragged */
  holds: id.nullable().default(null),
  /** where the piece in hand would be: the frames of a drag, between the writes */
  preview: preview.nullable().default(null),
});
export type Presence = z.output<typeof presence>;

/** Somebody here, as read from what they publish. */
export interface PersonHere extends Presence {
  readonly clientId: number;
  readonly isMe: boolean;
}

export const nobody: Presence = Object.freeze(presence.parse({}));

/** Reads what everybody publishes; a state that does not parse is nobody. In order of client id, so that lists do not jump. */
export function readPresence(states: ReadonlyMap<number, unknown>, me: number): PersonHere[] {
  const people: PersonHere[] = [];
  for (const [clientId, state] of states) {
    const parsed = presence.safeParse(state);
    if (parsed.success) people.push({ ...parsed.data, clientId, isMe: clientId === me });
  }
  return people.sort((a, b) => a.clientId - b.clientId);
}

/** The initials of a name: of its first and last word. */
export function initialsOf(name: string): string {
  const words = name.trim().split(/\s+/u).filter(Boolean);
  const first = [...(words[0] ?? '')][0] ?? '';
  const last = words.length > 1 ? ([...(words.at(-1) ?? '')][0] ?? '') : '';
  return (first + last).toUpperCase();
}

/** Never colour alone: the edge of a person's mark tells them apart too. */
export function edgeOf(clientId: number): Presence['edge'] {
  const edges = ['solid', 'dashed', 'dotted'] as const;
  return edges[clientId % 3] ?? 'solid';
}
