import type { Arrangement } from '#model/schema/types.ts';
import { pairOf } from '../moveDay/pairOf.ts';
import type { Session } from '../session/types.ts';
import { fetchWhenQuiet } from '../session/whenQuiet.ts';
import { nameOfArrangement } from '../text/nameOfArrangement.ts';

/** What draws two arrangements at once: fetched once the page is quiet, or before one is laid under the other. */
type LaidPart = typeof import('./drawLaid.ts');
let part: LaidPart | null = null;
const load = async (): Promise<void> => {
  part = await import('./drawLaid.ts');
};
fetchWhenQuiet(load);
/** Null: nothing was laid yet. */
export const laidPart = (): LaidPart | null => part;

/** The arrangement that lies under the shown one; null: none does. */
export function laidUnder(session: Session): Arrangement | null {
  const { laid } = session.view();
  return laid === null ? null : (session.classroom().arrangements.find(({ id }) => id === laid) ?? null);
}

/** The one to lay under: how the room stands, or when that is shown the next. Null: there is no other. */
export function otherOf(session: Session): Arrangement | null {
  const shown = session.arrangement();
  const pair = pairOf(session.classroom(), shown);
  return pair && (pair.from.id === shown.id ? pair.to : pair.from);
}

/** Lays the other one under the shown one, or takes it off again. */
export async function toggleLaid(session: Session): Promise<void> {
  if (session.view().laid !== null) {
    session.setView({ laid: null });
    session.announce('One arrangement is shown.');
    return;
  }
  const other = otherOf(session);
  if (!other) return;
  try {
    await load();
  } catch {
    session.announce('This part of the page is not on this device yet. Try again when the server is in reach.');
    return;
  }
  session.setView({ laid: other.id });
  session.announce(`"${nameOfArrangement(other)}" lies dashed under the shown one.`);
}
