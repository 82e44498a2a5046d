/** One thing on a board: where it would like its left edge, and its width. mm. */
export interface Packed {
  readonly x: number;
  readonly width: number;
}

/** mm the things take with this gap between neighbours; nothing takes 0. */
export function packedWidth(widths: readonly number[], gap: number): number {
  return widths.reduce((sum, width) => sum + width, 0) + Math.max(0, widths.length - 1) * gap;
}

/** The widest gap, at most the wanted one, at which the things fit a board; null when they do not fit even side by side. */
export function gapThatFits(widths: readonly number[], boardWidth: number, wanted: number): number | null {
  const spare = boardWidth - packedWidth(widths, 0);
  if (spare < -1e-9) return null;
  return widths.length < 2 ? wanted : Math.min(wanted, Math.max(0, spare) / (widths.length - 1));
}

/**
 * Left edges that keep the order and the gap and move nothing farther than needed: pushed right from the left end, then
 * back from the right end. The things must fit at this gap.
 */
export function nudge(things: readonly Packed[], boardWidth: number, gap: number): number[] {
  const xs = things.map((thing) => thing.x);
  let least = 0;
  things.forEach(({ width }, i) => {
    xs[i] = Math.max(xs[i] as number, least);
    least = (xs[i] as number) + width + gap;
  });
  let most = boardWidth;
  for (let i = things.length - 1; i >= 0; i--) {
    xs[i] = Math.min(xs[i] as number, most - (things[i] as Packed).width);
    most = (xs[i] as number) - gap;
  }
  return xs.map((x) => Math.max(0, x));
}

/**
 * Left edges with the same space between neighbours: as much as there is, in whole mm and at the ends too, if that is at
 * least the wanted gap; else as near to it as they fit. null when they do not fit side by side.
 */
export function spread(widths: readonly number[], boardWidth: number, gap: number): { xs: number[]; gap: number } | null {
  const closest = gapThatFits(widths, boardWidth, gap);
  if (closest === null) return null;
  const even = Math.floor((boardWidth - packedWidth(widths, 0)) / (widths.length + 1));
  const used = even >= gap ? even : closest;
  const spare = boardWidth - packedWidth(widths, used);
  let x = spare >= 2 ? Math.floor(spare / 2) : 0;
  const xs = widths.map((width) => {
    const at = x;
    x += width + used;
    return at;
  });
  return { xs, gap: used };
}

/** Left edges side by side from the left end of a board or from the right, with no gap. null when they do not fit. */
export function sideBySide(widths: readonly number[], boardWidth: number, end: 'left' | 'right'): { xs: number[]; gap: number } | null {
  if (gapThatFits(widths, boardWidth, 0) === null) return null;
  let x = end === 'left' ? 0 : Math.max(0, boardWidth - packedWidth(widths, 0));
  const xs = widths.map((width) => {
    const at = x;
    x += width;
    return at;
  });
  return { xs, gap: 0 };
}
