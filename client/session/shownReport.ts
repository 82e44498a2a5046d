import type { Report } from '#model/analysis/report.ts';
import { leftReasonOf } from '#model/findings/asLeft.ts';
import type { Finding } from '#model/findings/finding.ts';
import type { Left } from '#model/schema/types.ts';

/**
 * The report as it may be shown: null while it is still that of another arrangement, and what was just left as it is,
 * or taken up again, told so at once and not only when the checks have looked again. The same object for the same three.
 */
export function shownReports(): (report: Report | null, arrangement: string, left: readonly Left[]) => Report | null {
  let findings: { readonly of: readonly Finding[]; readonly left: readonly Left[]; readonly value: readonly Finding[] } | null = null;
  let last: { readonly of: Report; readonly findings: readonly Finding[]; readonly value: Report } | null = null;

  return (report, arrangement, left) => {
    if (report?.arrangement !== arrangement) return null;
    if (findings?.of !== report.findings || findings.left !== left)
      findings = { of: report.findings, left, value: withReasons(report.findings, left) };
    if (findings.value === report.findings) return report;
    if (last?.of !== report || last.findings !== findings.value)
      last = { of: report, findings: findings.value, value: { ...report, findings: findings.value } };
    return last.value;
  };
}

/** The very list when nothing reads differently. */
function withReasons(findings: readonly Finding[], left: readonly Left[]): readonly Finding[] {
  const entries = new Map([...left].reverse().map((entry) => [entry.key, entry]));
  const told = findings.map((finding) => {
    const leftReason = leftReasonOf(finding, entries.get(finding.key));
    return finding.leftReason === leftReason ? finding : { ...finding, leftReason };
  });
  return told.every((finding, i) => finding === findings[i]) ? findings : told;
}
