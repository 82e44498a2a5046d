import { childrenOnDate, type Promised, withPromised } from '#model/measures/trial.ts';
import type { Classroom } from '#model/schema/types.ts';
import { sayYearsAndMonths } from '../../text/sayAges.ts';

type Entry = Classroom['enrolment'][number];

/** What changes of the class when the promised children are added: the children now, or the enrolment from their date. */
export function addPromised(
  classroom: Classroom,
  promised: Promised,
  newId: () => string,
): Partial<Pick<Classroom, 'children' | 'enrolment'>> {
  const { children, enrolment } = classroom;
  const { from } = promised;
  if (from === null) {
    const groups = withPromised(children.groups, promised, (group) => ({
      id: newId(),
      name: sayYearsAndMonths(promised.months),
      ...group,
    }));
    return { children: { ...children, groups } };
  }
  const { entry, groups } = childrenOnDate(classroom, from);
  const base: Entry['groups'] = groups.map(({ fromMonths, toMonths, count }) => ({ fromMonths, toMonths, count }));
  const joined = withPromised(base, promised, (group): Entry['groups'][number] => ({ ...group }));
  if (entry === from) return { enrolment: enrolment.map((each) => (each.from === from ? { ...each, groups: joined } : each)) };
  return { enrolment: [...enrolment, { from, groups: joined }].sort((p, q) => (p.from < q.from ? -1 : p.from > q.from ? 1 : 0)) };
}
