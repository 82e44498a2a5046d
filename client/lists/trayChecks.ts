import type { Report } from '#model/analysis/report.ts';
import type { Finding, Severity } from '#model/findings/finding.ts';

/** The checks that name a material, gravest first; those left as they are do not mark it. */
export type ChecksOf = ReadonlyMap<string, readonly Finding[]>;

const rank: Readonly<Record<Severity, number>> = { must: 0, should: 1, note: 2 };
const kept = new WeakMap<Report['findings'], ChecksOf>();
const none: ChecksOf = new Map();

/** Findings by what they name: a material, a shelf. The same map for the same findings. */
export function checksBySubject(report: Report | null): ChecksOf {
  if (!report) return none;
  const known = kept.get(report.findings);
  if (known) return known;
  const map = new Map<string, Finding[]>();
  for (const finding of report.findings) {
    if (finding.outcome !== 'problem' || finding.leftReason !== null) continue;
    for (const subject of new Set(finding.subjects)) {
      const list = map.get(subject);
      if (list) list.push(finding);
      else map.set(subject, [finding]);
    }
  }
  for (const list of map.values()) list.sort((p, q) => rank[p.severity] - rank[q.severity]);
  kept.set(report.findings, map);
  return map;
}
