import { groupFindings, isIn } from '#model/analysis/groupFindings.ts';
import type { Finding } from '#model/findings/finding.ts';
import type { Left } from '#model/schema/types.ts';

export interface LeftGroup {
  readonly entry: Left;
  /** Of this entry and of those left with it. */
  readonly keys: readonly string[];
  /** undefined: the checks do not find it any more. */
  readonly finding: Finding | undefined;
}

/** What was left as one thing stands in the list once. */
export function leftGroups(left: readonly Left[], findings: readonly Finding[]): LeftGroup[] {
  const keys = new Set(left.map((entry) => entry.key));
  const groups = groupFindings(findings.filter((finding) => keys.has(finding.key)));
  const told = new Set<string>();
  return left.flatMap((entry): LeftGroup[] => {
    if (told.has(entry.key)) return [];
    const group = groups.find((candidate) => isIn(candidate, entry.key));
    const all = group ? [group.lead, ...group.others].map(({ key }) => key) : [entry.key];
    for (const key of all) told.add(key);
    return [{ entry, keys: all, finding: group?.lead }];
  });
}
