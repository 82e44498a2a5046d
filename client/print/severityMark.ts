import type { Finding, Severity } from '#model/findings/finding.ts';
import { type Mark, round, shape } from './marks.ts';

/** Severity is a shape, in black: filled diamond, half-filled triangle, ring. Centred on a point; `size` in mm. */
export function severityMark(severity: Severity, x: number, y: number, size: number): Mark[] {
  const half = size / 2;
  const p = (dx: number, dy: number) => ({ x: x + dx * half, y: y + dy * half });
  switch (severity) {
    case 'must':
      return [shape([p(0, -1), p(1, 0), p(0, 1), p(-1, 0)], { weight: 0.1, fill: 'black' })];
    case 'should':
      return [
        shape([p(0, -1), p(1, 0.8), p(-1, 0.8)], { weight: 0.25, fill: 'white' }),
        shape([p(0, -1), p(0, 0.8), p(-1, 0.8)], { weight: 0, fill: 'black' }),
      ];
    case 'note':
      return [round({ x, y }, half * 0.8, { weight: 0.3, fill: 'white' })];
  }
}

/** It stands as a mark on a printed plan: open, in one place, and asking for something. */
export const isMarked = ({ at, leftReason, outcome, severity }: Finding): boolean =>
  at !== undefined && leftReason === null && outcome === 'problem' && severity !== 'note';

/** Not known: a dashed ring. */
export const unknownMark = (x: number, y: number, size: number): Mark => round({ x, y }, size * 0.4, { weight: 0.25, dash: [0.6, 0.45] });
