import { sayChild } from '#model/findings/sayChild.ts';
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
  /** "0.84 m", or "0.84 m, low" where boards differ */
  readonly text: string;
  /** The lower of two of a kind: drawn double, so that they are told apart without their colour. */
  readonly isDouble: boolean;
}

interface BoardHeights {
  /** "Top", "Middle", "Low" */
  readonly name: string;
  /** mm behind the shelf's front where the hand goes */
  readonly atDepth: number;
  readonly take: number | null;
  readonly see: number;
}

export interface LineHeights {
  /** highest take and see line of each board, at the depth where a hand takes there; null: out of reach at any height */
  readonly boards: readonly BoardHeights[];
  readonly eye: number;
  /** Whose lines these are. mm */
  readonly child: { readonly months: number; readonly percentile: number; readonly isMeasured: boolean; readonly stature: number };
  /** only with a wheelchair user */
  readonly advisory: { readonly high: number; readonly low: number } | null;
}

/**
 * The lines of the smallest child, highest first. Where boards are taken at different depths each line says whose it
 * is, since a hand reaches less high further in.
 */
export function frontLines(heights: LineHeights, units: LengthUnits): FrontLine[] {
  const lines = [line('eye', 'eye line', heights.eye, units)];
  const depths = byDepth(heights.boards);
  for (const at of depths) {
    const whose = depths.length > 1 ? `, ${at.names}` : '';
    if (at.take !== null) lines.push(line('take', 'highest take', at.take, units, whose));
    lines.push(line('see', 'see line', at.see, units, whose));
  }
  if (heights.advisory) {
    lines.push(line('high', 'advisory high', heights.advisory.high, units), line('low', 'advisory low', heights.advisory.low, units));
  }
  const sorted = lines.sort((p, q) => q.z - p.z);
  return sorted.map((one, i) => ({ ...one, isDouble: sorted.findIndex(({ kind }) => kind === one.kind) < i }));
}

/** "For a girl of 3 years 0 months, smaller than 95 of 100; the hand 0.14 m behind the front." */
export function sayLines({ boards, child }: LineHeights, units: LengthUnits): string {
  const depths = byDepth(boards).map(({ atDepth, names }, _, all) => {
    const deep = `${sayLength(Math.round(atDepth / 10) * 10, units)} behind the front`;
    return all.length > 1 ? `${deep} (${names})` : deep;
  });
  const whose = child.isMeasured ? `your smallest child, ${sayLength(child.stature, units)} tall` : sayChild(child);
  return `Lines for ${whose}${depths.length > 0 ? `; the hand ${depths.join(', ')}` : ''}.`;
}

function line(kind: LineKind, name: string, z: number, units: LengthUnits, whose = ''): Omit<FrontLine, 'isDouble'> {
  const height = sayLength(Math.round(z / 10) * 10, units);
  return { kind, name, z, height, text: `${height}${whose}` };
}

/** mm: depths nearer than this share a line, drawn for the deepest: where a hand reaches least high */
const SAME_DEPTH = 50;

interface AtDepth extends BoardHeights {
  /** "top, middle": the boards that share the line */
  readonly names: string;
}

function byDepth(boards: readonly BoardHeights[]): AtDepth[] {
  const groups: BoardHeights[][] = [];
  for (const board of [...boards].sort((p, q) => q.atDepth - p.atDepth)) {
    const group = groups.at(-1);
    if (group?.[0] && group[0].atDepth - board.atDepth < SAME_DEPTH) group.push(board);
    else groups.push([board]);
  }
  // More than two lines of a kind cannot be told apart: the nearest has its own, the others that of the deepest.
  const kept = groups.length <= 2 ? groups : [groups.slice(0, -1).flat(), groups.at(-1) ?? []];
  return kept.flatMap((group) => {
    const deepest = group[0];
    const names = boards.filter((board) => group.includes(board)).map(({ name }) => name.toLowerCase());
    return deepest ? [{ ...deepest, names: names.join(', ') }] : [];
  });
}
