import type { Report } from '#model/analysis/report.ts';
import type { Finding } from '#model/findings/finding.ts';
import { shareFindings } from './shareFindings.ts';

/**
 * A report as a worker posts it: what the page has from the report before is only named. During a drag nearly all is, and
 * hundreds of findings copied at each step would take the page more time than drawing them.
 */
export interface SentReport extends Omit<Report, 'findings'> {
  /** A number: the place of the same finding in the report sent before. */
  readonly findings: readonly (Finding | number)[];
  /** Measures that are not in `measures`: the very one of before, or a list of which some entries were in that of before. */
  readonly again?: Readonly<Record<string, 'same' | readonly (Entry | number)[]>>;
}

type Entry = object;

/** The worker's side. One for each page, and every report goes through it. */
export function reportSender(): (report: Report) => SentReport {
  let findings: readonly Finding[] = [];
  let written = new Map<string, Written>();

  return (report) => {
    const shared = shareFindings(findings, report.findings);
    const placeOf = new Map(findings.map((finding, place) => [finding, place]));
    findings = shared;
    const measures: Record<string, unknown> = {};
    const again: Record<string, 'same' | (Entry | number)[]> = {};
    const now = new Map<string, Written>();
    for (const [key, value] of Object.entries(report.measures)) {
      const text = writtenOf(value);
      const before = written.get(key);
      now.set(key, text);
      if (before && isSame(before, text)) again[key] = 'same';
      else if (before?.entries && text.entries) again[key] = sentList(value as readonly Entry[], text.entries, before.entries);
      else measures[key] = value;
    }
    written = now;
    return { ...report, findings: shared.map((finding) => placeOf.get(finding) ?? finding), measures, again };
  };
}

/** The page's side: what was sent, whole again, each part that is the same the very object of before. */
export function reportReader(): (sent: SentReport) => Report {
  let before: Pick<Report, 'findings' | 'measures'> = { findings: [], measures: {} };

  return ({ findings, measures, again = {}, ...rest }) => {
    const isSameList = findings.length === before.findings.length && findings.every((finding, i) => finding === i);
    const known = before;
    const wholeAgain = Object.entries(again).map(([key, part]) => {
      const old = known.measures[key];
      return [key, part === 'same' ? old : part.map((entry) => (typeof entry === 'number' ? (old as readonly Entry[])[entry] : entry))];
    });
    before = {
      findings: isSameList
        ? known.findings
        : findings.map((finding) => (typeof finding === 'number' ? (known.findings[finding] as Finding) : finding)),
      measures: { ...measures, ...Object.fromEntries(wholeAgain) },
    };
    return { ...rest, ...before };
  };
}

/** A measure as text, to tell whether it is the same: a list by its entries. */
interface Written {
  readonly whole: string | null;
  readonly entries: readonly string[] | null;
}

const isEntry = (value: unknown): value is Entry => typeof value === 'object' && value !== null;

function writtenOf(value: unknown): Written {
  if (Array.isArray(value) && value.length > 0 && value.every(isEntry))
    return { whole: null, entries: value.map((entry) => JSON.stringify(entry)) };
  return { whole: JSON.stringify(value) ?? '', entries: null };
}

function isSame(p: Written, q: Written): boolean {
  if (!p.entries || !q.entries) return p.whole === q.whole && p.entries === q.entries;
  const { entries } = q;
  return p.entries.length === entries.length && p.entries.every((text, i) => text === entries[i]);
}

function sentList(list: readonly Entry[], texts: readonly string[], before: readonly string[]): (Entry | number)[] {
  const placeOf = new Map(before.map((text, place) => [text, place]));
  return list.map((entry, i) => placeOf.get(texts[i] as string) ?? entry);
}
