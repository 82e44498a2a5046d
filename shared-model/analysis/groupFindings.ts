import type { Finding } from '../findings/finding.ts';

/**
 * What one mend would answer: the first finding, and others of the same rule at the same place with the same figure. A narrow
 * place leads the ways that it narrows: it says where, how long, and for whom.
 */
export interface FindingGroup {
  readonly lead: Finding;
  readonly others: readonly Finding[];
}

/** mm: findings nearer than this lie at the same place. */
const SAME_PLACE = 20;

/** A pinch that narrows the ways to ten shelves is one thing to mend, so it stands in the list once. */
export function groupFindings(findings: readonly Finding[]): FindingGroup[] {
  const groups: { lead: Finding; others: Finding[] }[] = [];
  // Hundreds of one rule are common while a room is laid out: compare only what could be one thing.
  const alike = new Map<string, { lead: Finding; others: Finding[] }[]>();
  for (const finding of findings) {
    const kind = `${kindOf(finding)} ${finding.severity}`;
    const candidates = alike.get(kind) ?? [];
    const group = candidates.find(({ lead }) => isSameThing(lead, finding));
    if (group) {
      if (isPlace(finding) && !isPlace(group.lead)) {
        group.others.unshift(group.lead);
        group.lead = finding;
      } else group.others.push(finding);
      continue;
    }
    const started = { lead: finding, others: [] };
    groups.push(started);
    candidates.push(started);
    alike.set(kind, candidates);
  }
  return groups;
}

const PLACE = 'way/narrow holds';
const WAY = 'way/width narrow';
const nameOf = ({ rule, messageKey }: Finding): string => `${rule} ${messageKey}`;
const isPlace = (finding: Finding): boolean => nameOf(finding) === PLACE;

/** A way and the place that narrows it are one thing. */
function kindOf(finding: Finding): string {
  const name = nameOf(finding);
  return name === PLACE ? WAY : name;
}

export const isIn = (group: FindingGroup, key: string | null): boolean =>
  key !== null && (group.lead.key === key || group.others.some((other) => other.key === key));

function isSameThing(p: Finding, q: Finding): boolean {
  if (!p.at || !q.at || !p.measured || !q.measured || p.fix || q.fix) return false;
  // The cheapest question first: few lie near each other.
  if (Math.abs(p.at.x - q.at.x) >= SAME_PLACE || Math.hypot(p.at.x - q.at.x, p.at.y - q.at.y) >= SAME_PLACE) return false;
  if (p.leftReason !== q.leftReason) return false;
  return p.measured.unit === q.measured.unit && Math.abs(p.measured.value - q.measured.value) < 1;
}
