import type { Finding } from '#model/findings/finding.ts';

/** What is out of order and may be mended by moving trays. */
export const mendsOfOrder = (findings: readonly Finding[]): Finding[] =>
  findings.filter(({ rule, fix, leftReason }) => rule === 'order/sequence' && fix !== undefined && leftReason === null);
