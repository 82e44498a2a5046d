import type { Left } from '../schema/types.ts';
import type { Finding, Severity } from './finding.ts';

/** How a finding was when it was left as it is: what it said, and its figures in its own unit. */
export type AsLeft = NonNullable<Left['was']>;

export const asLeft = ({ message, severity, measured, needed }: Finding): AsLeft => ({
  message,
  severity,
  measured: measured?.value ?? null,
  needed: needed?.value ?? null,
});

const severities: readonly Severity[] = ['must', 'should', 'note'];
/** Share of what is needed by which it has to fall further short: less is a table pushed by a hair. */
const MORE = 0.005;

/**
 * A reason given for 1 child too many is none for 21: what is left as it is holds as long as it is no graver, and falls
 * no further short of what is needed, than it did then.
 */
export function isWorse({ severity, measured, needed }: Pick<Finding, 'severity' | 'measured' | 'needed'>, was: AsLeft): boolean {
  if (severities.indexOf(severity) < severities.indexOf(was.severity)) return true;
  const [then, now] = [shortBy(was.measured, was.needed), shortBy(measured?.value ?? null, needed?.value ?? null)];
  return then !== null && now !== null && now > then + MORE;
}

/** Why a finding is left as it is; null: it is open, because nobody left it or because it is worse than when it was left. */
export const leftReasonOf = (finding: Parameters<typeof isWorse>[0], entry: Left | undefined): string | null =>
  entry && !(entry.was && isWorse(finding, entry.was)) ? entry.reason : null;

/** Of what is needed; a number of things where none is wanted. */
const shortBy = (measured: number | null, needed: number | null): number | null =>
  measured === null || needed === null ? null : Math.abs(needed - measured) / (Math.abs(needed) || 1);
