import { countOf } from '../text/sayAges.ts';
import { sayCount } from '../text/sayCount.ts';
import { TextField } from '../ui/TextField.tsx';
import { TextLink } from '../ui/TextLink.tsx';
import { type DraftGroup, GroupsForm } from './GroupsForm.tsx';
import type { Part } from './part.ts';

/** How many children are promised from a date on; the Places sheet draws the year from it. */
export function EnrolmentPart({ classroom, change }: Part) {
  const { enrolment, children } = classroom;
  const changeAt = (index: number, set: Partial<(typeof enrolment)[number]>) =>
    change({ enrolment: enrolment.map((entry, i) => (i === index ? { ...entry, ...set } : entry)) });

  function addDate() {
    const last = enrolment.at(-1);
    const groups = (last?.groups ?? children.groups).map(({ fromMonths, toMonths, count }) => ({ fromMonths, toMonths, count }));
    change({ enrolment: [...enrolment, { from: nextMonth(last?.from), groups }] });
  }

  return (
    <fieldset className="form-part">
      <legend>Through the year</legend>
      <p className="aside">From each date on, this many children are expected. Before the first date: the children now.</p>
      {enrolment.map((entry, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: an entry has no id, and its date changes while it is typed
        <div className="form" key={index}>
          <div className="form-row">
            <TextField
              label="From the date"
              type="date"
              value={entry.from}
              mayBeEmpty={false}
              onCommit={(from) => changeAt(index, { from })}
            />
            <p className="group-verb">
              {sayCount(countOf(entry.groups), 'child', 'children')}{' '}
              <TextLink
                aria-label={`Strike out ${entry.from}`}
                onPress={() => change({ enrolment: enrolment.filter((_, i) => i !== index) })}
              >
                Strike out
              </TextLink>
            </p>
          </div>
          <GroupsForm
            title={`Children from ${entry.from}`}
            isNamed={false}
            groups={entry.groups.map(
              ({ fromMonths, toMonths, count }, i): DraftGroup => ({ key: String(i), name: '', fromMonths, toMonths, count }),
            )}
            onChange={(groups) =>
              changeAt(index, { groups: groups.map(({ fromMonths, toMonths, count }) => ({ fromMonths, toMonths, count })) })
            }
          />
        </div>
      ))}
      <div>
        <TextLink onPress={addDate}>Another date</TextLink>
      </div>
    </fieldset>
  );
}

/** The first of the month after a date, or after today. */
function nextMonth(after: string | undefined): string {
  const day = after === undefined ? new Date() : new Date(`${after}T00:00:00Z`);
  const base = Number.isNaN(day.getTime()) ? new Date() : day;
  return new Date(Date.UTC(base.getUTCFullYear(), base.getUTCMonth() + 1, 1)).toISOString().slice(0, 10);
}
