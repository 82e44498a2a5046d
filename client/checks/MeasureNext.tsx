import type { Report } from '#model/analysis/report.ts';
import { questions } from '#model/findings/finding.ts';
import { useSession } from '../session/hooks.ts';
import { TextLink } from '../ui/TextLink.tsx';
import { showFinding } from './showFinding.ts';
import { questionIds, questionOf, unanswered } from './sortFindings.ts';
import { WhyLink } from './WhyLink.tsx';

/** Checks that answered "cannot tell" and found nothing to say why: they broke. */
function brokenRules({ answers, findings }: Report): string[] {
  const told = new Set(findings.map(({ rule }) => rule));
  return Object.keys(answers).filter((rule) => answers[rule] === 'cannot-tell' && !told.has(rule));
}

/** Everything that could not be told, and what to measure or answer so that it can. */
export function MeasureNext({ report }: { report: Report }) {
  const session = useSession();
  const unknown = unanswered(report);
  const broken = brokenRules(report);
  if (unknown.length === 0 && broken.length === 0) return null;
  return (
    <section aria-labelledby="measure-title">
      <h3 className="question" id="measure-title">
        Measure these next
      </h3>
      <ul className="measure-next">
        {unknown.map((finding) => {
          const question = questionIds.find((id) => id === questionOf(finding.rule));
          const wanted = finding.missing.length === 0 ? finding.message : finding.missing.join('; ');
          return (
            <li key={finding.key}>
              <p>
                <b>Not known:</b> {wanted}
              </p>
              <p className="aside">
                for: {question ? questions[question] : finding.rule}{' '}
                <TextLink aria-label={`Show: ${wanted}`} onPress={() => showFinding(session, finding)}>
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
