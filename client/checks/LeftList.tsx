import type { Report } from '#model/analysis/report.ts';
import { useClassroom, useIsThinking, useSession } from '../session/hooks.ts';
import { TextLink } from '../ui/TextLink.tsx';

/** Findings left as they are, with the reason; one that no longer does anything says so. */
export function LeftList({ report }: { report: Report }) {
  const session = useSession();
  const { left } = useClassroom();
  const isThinking = useIsThinking();
  if (left.length === 0) return null;
  const byKey = new Map(report.findings.map((finding) => [finding.key, finding]));

  return (
    <section aria-labelledby="left-title">
      <h3 className="question" id="left-title">
        Left as they are
      </h3>
      <ul>
        {left.map((entry) => {
          const finding = byKey.get(entry.key);
          return (
            <li key={entry.key} className="finding">
              <p>
                {finding?.message ??
                  (isThinking ? 'Being looked at …' : 'This no longer does anything: the check does not find it in this arrangement.')}
              </p>
              <p className="aside">
                {entry.reason ? `“${entry.reason}”` : 'No reason was given.'} {[entry.by, sayDay(entry.at)].filter(Boolean).join(', ')}
              </p>
              <div className="verbs">
                <TextLink
                  aria-label={`Take up again: ${finding?.message ?? entry.reason}`}
                  onPress={() => {
                    session.commands.takeUpAgain(entry.key);
                    session.announce('Taken up again.');
                  }}
                >
                  {finding ? 'Take up again' : 'Strike out'}
                </TextLink>
              </div>
            </li>
          );
        })}
      </ul>
    </section>
  );
}

function sayDay(iso: string): string {
  const day = new Date(iso);
  return iso === '' || Number.isNaN(day.getTime()) ? '' : day.toLocaleDateString('en-GB', { day: 'numeric', month: 'long' });
}
