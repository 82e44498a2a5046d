import type { Report } from '#model/analysis/report.ts';
import { sayLeftState } from '#model/analysis/sayLeftState.ts';
import type { Finding, QuestionId } from '#model/findings/finding.ts';
import type { Left } from '#model/schema/types.ts';
import { useClassroom, useIsThinking, useSession } from '../session/hooks.ts';
import { MayChange } from '../session/MayChange.tsx';
import { TextLink } from '../ui/TextLink.tsx';
import { leftGroups } from './leftGroups.ts';
import { sayLeft } from './sayLeft.ts';
import { questionOf } from './sortFindings.ts';
import { WayDown } from './WayDown.tsx';
import { WhyLink } from './WhyLink.tsx';

/** Findings left as they are, with the reason; one that no longer does anything, or has become worse, says so. */
export function LeftList({ report, question }: { report: Report; question?: QuestionId }) {
  const session = useSession();
  const { left } = useClassroom();
  const isThinking = useIsThinking();
  const entries = question === undefined ? left : left.filter(({ key }) => questionOf(key.split(':')[0] ?? '') === question);
  if (entries.length === 0) return null;

  return (
    <section aria-labelledby="left-title">
      <h3 className="question" id="left-title" tabIndex={-1}>
        Left as they are
      </h3>
      <ul>
        {leftGroups(entries, report.findings).map(({ entry, keys, finding }) => (
          <li key={entry.key} className="finding">
            <LeftWords {...{ report, entry, isThinking }} now={finding?.message} />
            <p className="aside">
              {keys.length > 1 && `and ${keys.length - 1} more at the same place. `}
              {entry.reason ? `“${entry.reason}”` : 'No reason was given.'}
            </p>
            <p className="aside">{sayLeft(entry)}</p>
            <div className="verbs">
              <MayChange>
                <TextLink
                  aria-label={`${isLeft(finding) ? 'Take up again' : 'Take it away'}: ${finding?.message ?? entry.reason}`}
                  onPress={() => {
                    session.undo.beginStep();
                    for (const key of keys) session.commands.takeUpAgain(key);
                    session.undo.endStep();
                    session.announce(isLeft(finding) ? 'Taken up again.' : 'Taken away.');
                  }}
                >
                  {isLeft(finding) ? 'Take up again' : 'Take it away'}
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

/** One that has become worse is open already. */
const isLeft = (finding: Finding | undefined): boolean => finding !== undefined && finding.leftReason !== null;

interface WordsProps {
  readonly report: Report;
  readonly entry: Left;
  /** What the checks say of it now; undefined: they do not find it in this arrangement. */
  readonly now: string | undefined;
  readonly isThinking: boolean;
}

/** What it says now, what it said when it was left where that differs, and what became of it. */
function LeftWords({ report, entry, now, isThinking }: WordsProps) {
  const does = report.left?.find(({ key }) => key === entry.key)?.does ?? (now === undefined ? 'nothing' : 'here');
  const then = entry.was?.message;
  if (now === undefined && isThinking) return <p>Being looked at …</p>;
  const state = sayLeftState({ does });
  return (
    <>
      {now !== undefined && <p>{now}</p>}
      {then !== undefined && then !== '' && then !== now && <p className="aside">When it was left it said: “{then}”</p>}
      {state && <p>{state}</p>}
    </>
  );
}

/** How many were left as they are, and the way down to them. */
export function LeftLine({ report }: { report: Report }) {
  const { left } = useClassroom();
  if (left.length === 0) return null;
  const count = leftGroups(left, report.findings).length;
  return <WayDown to="left-title">{`${count} left as ${count === 1 ? 'it is' : 'they are'}`}</WayDown>;
}
