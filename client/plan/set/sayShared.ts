import type { Session } from '#client/session/types.ts';
import { measureOverlaps } from '#model/measures/overlaps.ts';
import type { SceneBody } from '#model/scene/types.ts';
import { lower, nameOfItem } from '../describe.ts';

/** More pairs than this are told by their number. */
const MOST = 3;

/** " In the same place now: table T2 and shelf 10." of what was just set; "": it stands on free floor. */
export function sayShared(session: Session, ids: ReadonlySet<string>): string {
  const name = ({ source, id }: SceneBody): string => lower(nameOfItem(session, { kind: source, id }));
  const pairs = measureOverlaps(session.scene()).flatMap(({ a, b }) => {
    if (!ids.has(a.id) && !ids.has(b.id)) return [];
    return [ids.has(a.id) ? `${name(a)} and ${name(b)}` : `${name(b)} and ${name(a)}`];
  });
  if (pairs.length === 0) return '';
  const more = pairs.length - MOST;
  return ` In the same place now: ${pairs.slice(0, MOST).join(', ')}${more > 0 ? `, and ${more} more` : ''}.`;
}
