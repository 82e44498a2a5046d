import type { Arrangement, Classroom } from '#model/schema/types.ts';

/** Two arrangements to compare: how the room stands, and the one that is shown, or else the next. Null: there is no other. */
export function pairOf(
  { arrangements, current }: Pick<Classroom, 'arrangements' | 'current'>,
  shown: Arrangement,
): { from: Arrangement; to: Arrangement } | null {
  const from = arrangements.find(({ id }) => id === current) ?? arrangements[0];
  const to = shown.id === from?.id ? arrangements.find(({ id }) => id !== from.id) : shown;
  return from && to ? { from, to } : null;
}
