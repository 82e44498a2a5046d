import type { Finding } from '../findings/finding.ts';

/** What one mend would answer: the first finding, and others of the same rule at the same place with the same figure. */
export interface FindingGroup {
  readonly lead: Finding;
  readonly others: readonly Finding[];
}

/** mm: findings nearer than this lie at the same place. */
const SAME_PLACE = 20;

/** A pinch that narrows the ways to ten shelves is one thing to mend, so it stands in the list once. */
export function groupFindings(findings: readonly Finding[]): FindingGroup[] {
  const groups: { lead: Finding; others: Finding[] }[] = [];
  for (const finding of findings) {
    const group = groups.find(({ lead }) => isSameThing(lead, finding));
    if (group) group.others.push(finding);
    else groups.push({ lead: finding, others: [] });
  }
  return groups;
}

export const isIn = (group: FindingGroup, key: string | null): boolean =>
  key !== null && (group.lead.key === key || group.others.some((other) => other.key === key));

function isSameThing(p: Finding, q: Finding): boolean {
  if (p.rule !== q.rule || p.severity !== q.severity || p.messageKey !== q.messageKey) return false;
  if (!p.at || !q.at || !p.measured || !q.measured || p.fix || q.fix || p.leftReason !== q.leftReason) return false;
  const isNear = Math.hypot(p.at.x - q.at.x, p.at.y - q.at.y) < SAME_PLACE;
  return isNear && p.measured.unit === q.measured.unit && Math.abs(p.measured.value - q.measured.value) < 1;
}
