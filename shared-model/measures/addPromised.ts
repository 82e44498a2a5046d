import type { Classroom } from '../schema/types.ts';
import { childrenOnDate, type Promised, withPromised } from './trial.ts';

type Entry = Classroom['enrolment'][number];
type Counted = Entry['groups'][number];

/** What changes of a class. */
export type Addition = Partial<Pick<Classroom, 'children' | 'enrolment'>>;

/**
 * What changes of the class when the promised children are added: the children now, where they come now, and the
 * enrolment from their day on. Where an entry is in force on that day a new one begins with them; those after it get
 * them too, older by the months between.
 * @param today as 2026-11-26
 * @param named id and name of a group that is made for them
 */
export function addPromised(
  { children, enrolment }: Pick<Classroom, 'children' | 'enrolment'>,
  promised: Promised,
  today: string,
  named: () => { readonly id: string; readonly name: string },
): Addition {
  const first = promised.from ?? today;
  const { entry, groups } = childrenOnDate({ children, enrolment }, first);
  const entries = enrolment.map((each) =>
    each.from < first ? each : { ...each, groups: withThem(each.groups, older(promised, first, each.from)) },
  );
  // Who comes now, where no entry is in force yet, is in the children counted now.
  const begins = entry !== first && (promised.from !== null || entry !== null);
  // An entry counts ages: it does not take over the ids and names of the groups of now.
  if (begins) entries.push({ from: first, groups: withThem(entry === null ? groups.map(bare) : groups, promised) });
  entries.sort((p, q) => (p.from < q.from ? -1 : p.from > q.from ? 1 : 0));
  const year = entries.length === 0 ? {} : { enrolment: entries };
  if (promised.from !== null) return year;
  return { ...year, children: { ...children, groups: withPromised(children.groups, promised, (group) => ({ ...named(), ...group })) } };
}

type Group = Pick<Counted, 'fromMonths' | 'toMonths' | 'count'>;
const bare = ({ fromMonths, toMonths, count }: Group): Group => ({ fromMonths, toMonths, count });

/** Whatever else a group holds stays with it. */
const withThem = (groups: readonly Group[], promised: Promised): Counted[] =>
  withPromised(
    groups.map((group): Counted => ({ ...group })),
    promised,
    (group): Counted => ({ ...group }),
  );

/** So much older as whole months lie between. */
function older(promised: Promised, from: string, to: string): Promised {
  const [p, q] = [new Date(`${from}T00:00:00Z`), new Date(`${to}T00:00:00Z`)];
  const isWhole = q.getUTCDate() >= p.getUTCDate();
  const months = (q.getUTCFullYear() - p.getUTCFullYear()) * 12 + q.getUTCMonth() - p.getUTCMonth() - (isWhole ? 0 : 1);
  return { ...promised, months: promised.months + Math.max(0, months || 0) };
}
