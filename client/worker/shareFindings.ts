import type { Finding } from '#model/findings/finding.ts';

/**
 * The new findings, each the very object of before where it says the same, and the very list when all do: what comes
 * from a worker is always a copy, and a list of hundreds would be drawn again at each frame of a drag.
 */
export function shareFindings(before: readonly Finding[], now: readonly Finding[]): readonly Finding[] {
  const byKey = new Map(before.map((finding) => [finding.key, finding]));
  const shared = now.map((finding) => {
    const known = byKey.get(finding.key);
    return known && (known === finding || saysTheSame(known, finding)) ? known : finding;
  });
  return shared.length === before.length && shared.every((finding, i) => finding === before[i]) ? before : shared;
}

function saysTheSame(p: Finding, q: Finding): boolean {
  return (
    p.message === q.message &&
    p.why === q.why &&
    p.messageKey === q.messageKey &&
    p.rule === q.rule &&
    p.outcome === q.outcome &&
    p.severity === q.severity &&
    p.leftReason === q.leftReason &&
    p.at?.x === q.at?.x &&
    p.at?.y === q.at?.y &&
    isSameFigure(p.measured, q.measured) &&
    isSameFigure(p.needed, q.needed) &&
    isSameList(p.subjects, q.subjects) &&
    isSameList(p.trays ?? [], q.trays ?? []) &&
    isSameList(p.sources, q.sources) &&
    isSameList(p.missing, q.missing) &&
    isSameFix(p.fix, q.fix)
  );
}

const isSameFigure = (p: Finding['measured'], q: Finding['measured']): boolean => p?.value === q?.value && p?.unit === q?.unit;

const isSameList = (p: readonly string[], q: readonly string[]): boolean => p.length === q.length && p.every((value, i) => value === q[i]);

/** Few findings have one, so it may be written out. */
const isSameFix = (p: Finding['fix'], q: Finding['fix']): boolean => (p && q ? JSON.stringify(p) === JSON.stringify(q) : p === q);
