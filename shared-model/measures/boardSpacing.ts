import type { SceneTray } from '../scene/types.ts';
import type { Placement } from '../schema/types.ts';
import type { BoardRoom } from './boardRoom.ts';
import { spread } from './order/packing.ts';

/** Trays that are spaced as one: one behind the other, or a single one. mm. */
interface Group {
  readonly trays: readonly SceneTray[];
  readonly x: number;
  readonly width: number;
}

/** Left edges (mm) for things of these widths on a board, with the gap between them; null when they do not fit. */
type Spacing = (widths: readonly number[], boardWidth: number, gap: number) => { xs: number[]; gap: number } | null;

/**
 * New places for the trays of a board, in the order they have: evenly spaced with at least the wanted gap, else packed
 * closer; or as another spacing puts them. A tray that is too deep is turned if that helps. What stands behind another stays behind it.
 * @returns every tray that then stands elsewhere, with the gap (mm); null when they do not fit
 */
export function spaceBoard(
  { board, wide, deep, tall, overlaps, unknown }: BoardRoom,
  gap: number,
  spacing: Spacing = spread,
): { placements: Placement[]; gap: number } | null {
  if (wide.length > 0 || tall.length > 0 || unknown.length > 0) return null;
  if (overlaps.some(({ left, right }) => left.board !== right.board)) return null;
  const turning = new Set(deep.map(({ tray }) => tray));
  if ([...turning].some((tray) => tray.width === null || tray.depth === null || tray.width > board.depth || tray.depth > board.width))
    return null;
  const sizeOf = (tray: SceneTray) =>
    turning.has(tray) ? { width: tray.depth ?? 0, depth: tray.width ?? 0 } : { width: tray.width ?? 0, depth: tray.depth ?? 0 };
  const groups = turning.size === 0 ? groupsOf(board.trays) : null;
  const spaced = place(groups ?? board.trays.map((tray) => ({ trays: [tray], x: tray.placement.x, width: sizeOf(tray).width })), (widths) =>
    spacing(widths, board.width, gap),
  );
  if (!spaced) return null;
  const placements = spaced.at.flatMap(({ group, x }) =>
    group.trays.flatMap((tray): Placement[] => {
      const at = x + tray.placement.x - group.x;
      const y = Math.min(Math.max(0, tray.placement.y), Math.max(0, board.depth - sizeOf(tray).depth));
      const turned = turning.has(tray) ? !tray.placement.turned : tray.placement.turned;
      const isSame = at === tray.placement.x && y === tray.placement.y && turned === tray.placement.turned;
      return isSame ? [] : [{ ...tray.placement, x: at, y, turned }];
    }),
  );
  return { placements, gap: spaced.gap };
}

function place(groups: readonly Group[], spacing: (widths: readonly number[]) => ReturnType<Spacing>) {
  const spaced = spacing(groups.map(({ width }) => width));
  return spaced && { at: groups.map((group, i) => ({ group, x: spaced.xs[i] as number })), gap: spaced.gap };
}

/** Groups from the left; null when things in a group stand in the same place, so that each has to be spaced by itself. */
function groupsOf(trays: readonly SceneTray[]): Group[] | null {
  const groups: { trays: SceneTray[]; x: number; end: number }[] = [];
  for (const tray of trays) {
    const { x } = tray.placement;
    const end = x + (tray.width ?? 0);
    const last = groups.at(-1);
    if (!last || x >= last.end || last.trays.some((other) => isInTheWay(other, tray))) {
      groups.push({ trays: [tray], x, end });
      continue;
    }
    last.trays.push(tray);
    last.end = Math.max(last.end, end);
  }
  return groups.map(({ trays: members, x, end }) => ({ trays: members, x, width: end - x }));
}

/** Beside or over one another, not one behind the other. */
function isInTheWay(p: SceneTray, q: SceneTray): boolean {
  const [pDepth, qDepth] = [p.depth ?? Infinity, q.depth ?? Infinity];
  return p.placement.y + pDepth > q.placement.y && q.placement.y + qDepth > p.placement.y;
}
