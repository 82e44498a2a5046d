import type { LengthUnits } from '#model/units/sayLength.ts';
import { sayLength } from '#model/units/sayLength.ts';

export type LineKind = 'take' | 'eye' | 'see' | 'high' | 'low';

/** A height of the smallest child on the front (mm above the floor). */
export interface FrontLine {
  readonly kind: LineKind;
  readonly z: number;
  readonly name: string;
  /** "0.84 m" */
  readonly height: string;
  /** "0.84 m, 0.12 m deep" */
  readonly text: string;
  /** True but for the second line of a kind, which holds nearer the front. */
  readonly isDeepest: boolean;
}

export interface LineHeights {
  /** highest take and see line of each board, at the depth where a hand takes there; null: out of reach at any height */
  readonly boards: readonly { readonly atDepth: number; readonly take: number | null; readonly see: number }[];
  readonly eye: number;
  /** only with a wheelchair user */
  readonly advisory: { readonly high: number; readonly low: number } | null;
}

/**
 * The lines of the smallest child, highest first. Where boards are taken at different depths a line is drawn for each
 * depth, since a hand reaches less high further in.
 */
export function frontLines(heights: LineHeights, units: LengthUnits): FrontLine[] {
  const lines: FrontLine[] = [line('eye', 'eye line', heights.eye, units)];
  const depths = byDepth(heights.boards);
  for (const [i, at] of depths.entries()) {
    const deep = `, ${sayLength(at.atDepth, units)} deep`;
    if (at.take !== null) lines.push(line('take', 'highest take', at.take, units, deep, i === 0));
    lines.push(line('see', 'see line', at.see, units, deep, i === 0));
  }
  if (heights.advisory) {
    lines.push(line('high', 'advisory high', heights.advisory.high, units), line('low', 'advisory low', heights.advisory.low, units));
  }
  return lines.sort((p, q) => q.z - p.z);
}

function line(kind: LineKind, name: string, z: number, units: LengthUnits, deep = '', isDeepest = true): FrontLine {
  const height = sayLength(Math.round(z / 10) * 10, units);
  return { kind, name, z, height, text: `${height}${deep}`, isDeepest };
}

/** mm: depths nearer than this share a line, drawn for the deepest: where a hand reaches least high */
const SAME_DEPTH = 50;

function byDepth(boards: LineHeights['boards']): LineHeights['boards'] {
  const deepestFirst = [...boards].sort((p, q) => q.atDepth - p.atDepth);
  const kept: LineHeights['boards'][number][] = [];
  for (const board of deepestFirst) {
    const last = kept.at(-1);
    if (!last || last.atDepth - board.atDepth >= SAME_DEPTH) kept.push(board);
  }
  // More than two lines of a kind cannot be told apart: the deepest and the nearest say it.
  return kept.length <= 2 ? kept : kept.filter((_, i) => i === 0 || i === kept.length - 1);
}
