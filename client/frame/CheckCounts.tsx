import type { Report } from '#model/analysis/report.ts';
import type { Severity } from '#model/findings/finding.ts';
import { openGroups, unanswered } from '../checks/sortFindings.ts';
import { useIsThinking, useReportOf } from '../session/hooks.ts';
import { SeverityMark, severityWord } from '../ui/SeverityMark.tsx';

const severities: readonly Severity[] = ['must', 'should', 'note'];

/** How many checks are open, by severity, and how many could not be answered. */
export function CheckCounts() {
  const figures = useReportOf((report) => report && countsOf(report).join());
  const isThinking = useIsThinking();
  if (figures === null) return <p className="aside">being worked out</p>;
  const [unknown = 0, ...bySeverity] = figures.split(',').map(Number);
  const counts = severities.map((severity, i) => ({ severity, count: bySeverity[i] ?? 0 }));
  const said = counts.filter(({ count }) => count > 0);
  return (
    <p className="counts">
      {said.map(({ severity, count }) => (
        <span key={severity} className={`count severity ${severity}`}>
          <SeverityMark mark={severity} /> {count} {severityWord[severity]}
        </span>
      ))}
      {unknown > 0 && <span className="count aside">{unknown} not known</span>}
      {said.length === 0 && unknown === 0 && !isThinking && <span>none open</span>}
      {isThinking && <span className="count aside">still looking …</span>}
    </p>
  );
}

/** What is not known, then what is open by severity. */
function countsOf(report: Report): number[] {
  const open = openGroups(report);
  return [unanswered(report).length, ...severities.map((severity) => open.filter(({ lead }) => lead.severity === severity).length)];
}
