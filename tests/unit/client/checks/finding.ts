import type { Report } from '#model/analysis/report.ts';
import type { Finding, Outcome } from '#model/findings/finding.ts';

/** A finding for tests of the column; what is left out is a way that is too narrow. */
export function finding(change: Partial<Finding> = {}): Finding {
  return {
    key: 'way/width:s1',
    rule: 'way/width',
    messageKey: 'narrow',
    outcome: 'problem',
    severity: 'must',
    subjects: ['s1'],
    message: 'The way to s1 is too narrow.',
    why: 'A child with a tray does not get through.',
    sources: ['A01'],
    missing: [],
    leftReason: null,
    ...change,
  };
}

export function report(findings: readonly Finding[], answers: Record<string, Outcome> = {}): Report {
  return { format: 'lowshelf.report', version: 1, classroom: 'Plain room', arrangement: 'a1', answers, findings, measures: {} };
}
