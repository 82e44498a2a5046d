import { groupFindings } from '#model/analysis/groupFindings.ts';
import type { Outcome } from '#model/findings/finding.ts';
import { PracticalLifeWords } from '../checks/PracticalLifeWords.tsx';
import { pointOut } from '../checks/pointOut.ts';
import { leavesPracticalLife } from '../front/practicalLife.ts';
import { useReport, useScene, useSession } from '../session/hooks.ts';
import { SeverityWord } from '../ui/SeverityMark.tsx';
import { TextLink } from '../ui/TextLink.tsx';

const says: Readonly<Record<Outcome, string>> = {
  problem: 'A problem, in this arrangement:',
  fine: 'Fine, in this arrangement.',
  'cannot-tell': 'It cannot tell yet:',
  'does-not-apply': 'It does not apply: there is nothing here that it looks at.',
};

/** What the check says of the room on the sheet now, with a way back to each finding. */
export function InThisClass({ rule, onClose }: { rule: string; onClose: () => void }) {
  const report = useReport();
  const session = useSession();
  const isLeft = leavesPracticalLife(useScene()) && rule === 'order/sequence';
  const answer = report?.answers[rule];
  // What one thing mends stands here once.
  const found = groupFindings(report?.findings.filter((finding) => finding.rule === rule) ?? []);
  return (
    <div className="page-here">
      <h4>In this class now</h4>
      <p>{!answer ? 'Being worked out …' : isLeft && answer === 'does-not-apply' ? 'It does not apply:' : says[answer]}</p>
      {isLeft && <PracticalLifeWords />}
      {found.length > 0 && (
        <ul className="page-found">
          {found.map(({ lead: finding, others }) => (
            <li key={finding.key}>
              {finding.outcome === 'problem' ? <SeverityWord severity={finding.severity} /> : <b>not known</b>} {finding.message}
              {others.length > 0 && ` ${others.length} more at the same place.`}
              {finding.missing.length > 0 && ` To measure or ask: ${finding.missing.join('; ')}.`}
              {finding.leftReason !== null && ` Left as it is${finding.leftReason === '' ? '' : `: “${finding.leftReason}”`}.`}{' '}
              <TextLink
                aria-label={`Show on the sheet: ${finding.message}`}
                onPress={() => {
                  onClose();
                  // Places has a list of its own for what is about places; all else stands beside the plan.
                  if (session.view().sheet !== 'places' || !rule.startsWith('places/')) session.setView({ sheet: 'room' });
                  pointOut(session, finding);
                }}
              >
                Show
              </TextLink>
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}
