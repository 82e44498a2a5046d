import type { Severity } from '#model/findings/finding.ts';
import { openGroups, unanswered } from '../checks/sortFindings.ts';
import { useReport } from '../session/hooks.ts';
import { SeverityMark, severityWord } from '../ui/SeverityMark.tsx';

const severities: readonly Severity[] = ['must', 'should', 'note'];

/** How many checks are open, by severity, and how many could not be answered. */
export function CheckCounts() {
  const report = useReport();
  if (!report) return <p className="aside">being worked out</p>;
  const open = openGroups(report);
  const unknown = unanswered(report).length;
  const counts = severities.map((severity) => ({ severity, count: open.filter(({ lead }) => lead.severity === severity).length }));
  const said = counts.filter(({ count }) => count > 0);
  return (
    <p className="counts">
      {said.map(({ severity, count }) => (
        <span key={severity} className={`count severity ${severity}`}>
          <SeverityMark mark={severity} /> {count} {severityWord[severity]}
        </span>
      ))}
      {unknown > 0 && <span className="count aside">{unknown} not known</span>}
      {said.length === 0 && unknown === 0 && <span>none open</span>}
    </p>
  );
}
