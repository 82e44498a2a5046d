import type { Report } from '#model/analysis/report.ts';
import type { Finding } from '#model/findings/finding.ts';

/**
 * A live report with what the slower checks said last: they stand until they have looked again.
 * In the order of the settled report, so that the list does not jump. Nothing of another arrangement is taken over.
 */
export function joinReports(live: Report, settled: Report | null): Report {
  if (settled?.arrangement !== live.arrangement) return live;
  const rules = [...new Set([...Object.keys(settled.answers), ...Object.keys(live.answers)])];
  const sourceOf = (rule: string): Report => (rule in live.answers ? live : settled);
  const findingsOf = new Map([live, settled].map((report) => [report, byRule(report)]));
  return {
    ...live,
    answers: Object.fromEntries(rules.flatMap((rule) => [[rule, sourceOf(rule).answers[rule] ?? 'cannot-tell']])),
    findings: rules.flatMap((rule) => findingsOf.get(sourceOf(rule))?.get(rule) ?? []),
    measures: { ...settled.measures, ...live.measures },
    ...(settled.left && { left: settled.left }),
  };
}

function byRule({ findings }: Report): Map<string, Finding[]> {
  const found = new Map<string, Finding[]>();
  for (const finding of findings) {
    const list = found.get(finding.rule);
    if (list) list.push(finding);
    else found.set(finding.rule, [finding]);
  }
  return found;
}
