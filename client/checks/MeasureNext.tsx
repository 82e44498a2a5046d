import type { Report } from '#model/analysis/report.ts';
import { type Finding, questions } from '#model/findings/finding.ts';
import { useFrameDialogs } from '../frame/frameDialogs.ts';
import { useSession } from '../session/hooks.ts';
import { MayChange } from '../session/MayChange.tsx';
import { oneStop } from '../ui/oneStop.ts';
import { TextLink } from '../ui/TextLink.tsx';
import { pointOut } from './pointOut.ts';
import { questionIds, questionOf, unanswered } from './sortFindings.ts';
import { WhyLink } from './WhyLink.tsx';
import { wantedOnce } from './wantedOnce.ts';

/** Checks that answered "cannot tell" and found nothing to say why: they broke. */
function brokenRules({ answers, findings }: Report): string[] {
  const told = new Set(findings.map(({ rule }) => rule));
  return Object.keys(answers).filter((rule) => answers[rule] === 'cannot-tell' && !told.has(rule));
}

/** Everything that could not be told, and what to measure or answer so that it can. */
export function MeasureNext({ report }: { report: Report }) {
  const session = useSession();
  const dialogs = useFrameDialogs();
  const unknown = unanswered(report);
  const broken = brokenRules(report);
  if (unknown.length === 0 && broken.length === 0) return null;
  return (
    <section aria-labelledby="measure-title">
      <h3 className="question" id="measure-title">
        Measure these next
      </h3>
      <ul ref={oneStop} className="measure-next">
        {wantedOnce(unknown).map(({ wanted, finding, others }) => {
          const question = questionIds.find((id) => id === questionOf(finding.rule));
          return (
            <li key={finding.key}>
              <p>
                <b>Not known:</b> {wanted}
              </p>
              <p className="aside">
                for: {question ? questions[question] : finding.rule}
                {others > 0 && ` (${others + 1} checks)`}{' '}
                {isExitRules(finding) && (
                  <MayChange>
                    <TextLink onPress={() => dialogs.open('class')}>Choose them in “The class”</TextLink>{' '}
                  </MayChange>
                )}
                <TextLink aria-label={`Show: ${wanted}`} onPress={() => pointOut(session, finding)}>
                  Show
                </TextLink>{' '}
                <WhyLink rule={finding.rule} about={wanted} />
              </p>
            </li>
          );
        })}
        {broken.map((rule) => (
          <li key={rule}>
            <p>
              <b>Not known:</b> one check could not be worked out; the line above the sheet says what happened.
            </p>
            <p className="aside">
              for: {questions[questionOf(rule) as keyof typeof questions]} <WhyLink rule={rule} about={rule} />
            </p>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** No rules for the ways out are chosen: that is no measuring, but a setting. */
const isExitRules = ({ rule, messageKey }: Finding): boolean => rule.startsWith('exit/') && messageKey === 'rules';
