import type { Report } from '#model/analysis/report.ts';
import { sayLeftState } from '#model/analysis/sayLeftState.ts';
import { useClassroom, useIsThinking, useSession } from '../session/hooks.ts';
import { MayChange } from '../session/MayChange.tsx';
import { TextLink } from '../ui/TextLink.tsx';
import { leftGroups } from './leftGroups.ts';
import { sayLeft } from './sayLeft.ts';
import { WhyLink } from './WhyLink.tsx';

/** Findings left as they are, with the reason; one that no longer does anything says so. */
export function LeftList({ report }: { report: Report }) {
  const session = useSession();
  const { left } = useClassroom();
  const isThinking = useIsThinking();
  if (left.length === 0) return null;

  return (
    <section aria-labelledby="left-title">
      <h3 className="question" id="left-title" tabIndex={-1}>
        Left as they are
      </h3>
      <ul>
        {leftGroups(left, report.findings).map(({ entry, keys, finding }) => (
          <li key={entry.key} className="finding">
            <p>{finding?.message ?? (isThinking ? 'Being looked at …' : sayGone(report, entry.key))}</p>
            <p className="aside">
              {keys.length > 1 && `and ${keys.length - 1} more at the same place. `}
              {entry.reason ? `“${entry.reason}”` : 'No reason was given.'}
            </p>
            <p className="aside">{sayLeft(entry)}</p>
            <div className="verbs">
              <MayChange>
                <TextLink
                  aria-label={`${finding ? 'Take up again' : 'Take it away'}: ${finding?.message ?? entry.reason}`}
                  onPress={() => {
                    session.undo.beginStep();
                    for (const key of keys) session.commands.takeUpAgain(key);
                    session.undo.endStep();
                    session.announce(finding ? 'Taken up again.' : 'Taken away.');
                  }}
                >
                  {finding ? 'Take up again' : 'Take it away'}
                </TextLink>
              </MayChange>
              {finding && <WhyLink rule={finding.rule} about={finding.message} />}
            </div>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Of an entry that the checks do not find in this arrangement. */
function sayGone({ left }: Report, key: string): string {
  const does = left?.find((entry) => entry.key === key)?.does;
  return sayLeftState({ does: does === 'elsewhere' ? 'elsewhere' : 'nothing' }) ?? '';
}
