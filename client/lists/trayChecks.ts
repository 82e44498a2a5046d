import type { Report } from '#model/analysis/report.ts';
import type { Finding, Severity } from '#model/findings/finding.ts';
import { sameList } from '#model/scene/kept.ts';

/** The checks that name a material, gravest first; those left as they are do not mark it. */
export type ChecksOf = ReadonlyMap<string, readonly Finding[]>;

const rank: Readonly<Record<Severity, number>> = { must: 0, should: 1, note: 2 };
const kept = new WeakMap<Report['findings'], ChecksOf>();
const none: ChecksOf = new Map();
let latest = none;

/** Findings by what they name: a material, a shelf. The same map for the same findings. */
export function checksBySubject(report: Report | null): ChecksOf {
  if (!report) return none;
  const known = kept.get(report.findings);
  if (known) return known;
  const map = new Map<string, Finding[]>();
  for (const finding of report.findings) {
    if (finding.outcome !== 'problem' || finding.leftReason !== null) continue;
    for (const subject of new Set([...finding.subjects, ...(finding.trays ?? [])])) {
      const list = map.get(subject);
      if (list) list.push(finding);
      else map.set(subject, [finding]);
    }
  }
  for (const list of map.values()) list.sort((p, q) => rank[p.severity] - rank[q.severity]);
  // What is said of a thing stays the very list while the same is said: lines that hang on it are not made anew.
  const checks: ChecksOf = new Map([...map].map(([subject, list]) => [subject, sameList(latest.get(subject), list)]));
  latest = checks;
  kept.set(report.findings, checks);
  return checks;
}
