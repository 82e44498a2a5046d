import type { Scene, SceneBoard, SceneSide, SceneTray } from '../scene/types.ts';
import type { Side } from '../schema/types.ts';
import { meets } from '../units/compare.ts';
import { packedWidth } from './order/packing.ts';

/** mm: edges that touch this much are no overlap. */
const TOUCH = 1;

type BoardEnd = 'left end' | 'right end' | 'front' | 'back';

/** How the trays of one board stand on it. Lengths in mm. */
export interface BoardRoom {
  readonly side: SceneSide;
  readonly board: SceneBoard;
  /** Trays that are longer, deeper or higher than the place they have. */
  readonly wide: readonly Excess[];
  readonly deep: readonly Excess[];
  readonly tall: readonly Excess[];
  /** Pairs that stand in the same place, with the overlap along the board. */
  readonly overlaps: readonly Pair[];
  /** Trays that stick out over an edge. */
  readonly hangs: readonly (Excess & { readonly end: BoardEnd })[];
  /** Neighbours with less than the wanted gap between them. */
  readonly close: readonly Pair[];
  /** Trays whose size is not known as far as it matters here. */
  readonly unknown: readonly { readonly tray: SceneTray; readonly lacks: readonly string[] }[];
  /** Length left when all stand side by side with the wanted gap; below zero: too much by that. Unknown widths count 0. */
  readonly spare: number;
  /** How many more trays of the usual width here would fit, with the gap. */
  readonly more: number;
}
export interface Excess {
  readonly tray: SceneTray;
  readonly by: number;
}
interface Pair {
  readonly left: SceneTray;
  readonly right: SceneTray;
  /** overlap, or the gap */
  readonly by: number;
}

/** mm: what counts as one more tray on an empty board (a small tray, an estimate of ours). */
const SMALL_TRAY = 300;

/** Reads the room on one board. `gap` is what the class wants between trays (mm). */
export function boardRoom(scene: Scene, side: SceneSide, board: SceneBoard, gap: number): BoardRoom {
  const spots = board.trays.map((tray): Spot => ({ tray, x: tray.placement.x, y: tray.placement.y, width: tray.width, depth: tray.depth }));
  const behind = fromOtherSide(scene, side, board);
  const pairs = pairsOf(spots, behind, gap);
  const tooLong = (tray: SceneTray) =>
    tray.width === null || meets(board.width, tray.width) ? [] : [{ tray, by: tray.width - board.width }];
  const tooDeep = (tray: SceneTray) =>
    tray.depth === null || meets(board.depth, tray.depth) ? [] : [{ tray, by: tray.depth - board.depth }];
  const tooHigh = ({ height }: SceneTray) =>
    height === null || board.clear === null || meets(board.clear, height) ? 0 : height - board.clear;
  const widths = board.trays.flatMap((tray) => tray.width ?? []);
  const spare = board.width - packedWidth(widths, gap);
  return {
    side,
    board,
    wide: board.trays.flatMap(tooLong),
    deep: board.trays.flatMap(tooDeep),
    tall: board.trays.filter((tray) => tooHigh(tray) > 0).map((tray) => ({ tray, by: tooHigh(tray) })),
    overlaps: pairs.filter(({ by }) => by < -TOUCH).map((pair) => ({ ...pair, by: -pair.by })),
    hangs: board.trays.flatMap((tray) => hangsOf(tray, board)),
    close: pairs.filter(({ left, right, by }) => by >= -TOUCH && !meets(by, gap) && left.board === right.board),
    unknown: board.trays.map((tray) => ({ tray, lacks: lacksOf(tray, board) })).filter(({ lacks }) => lacks.length > 0),
    spare,
    more: moreOf(widths, spare, gap),
  };
}

interface Spot {
  readonly tray: SceneTray;
  readonly x: number;
  readonly y: number;
  readonly width: number | null;
  readonly depth: number | null;
}

function moreOf(widths: readonly number[], spare: number, gap: number): number {
  const usual = widths.length === 0 ? SMALL_TRAY : widths.reduce((sum, width) => sum + width, 0) / widths.length;
  const free = widths.length === 0 ? spare + gap : spare;
  return Math.max(0, Math.floor((free + 1e-6) / (usual + gap)));
}

/** Pairs near enough that lie one beside the other: the gap along the board, below zero an overlap. One behind the other is no pair. */
function pairsOf(spots: readonly Spot[], behind: readonly Spot[], gap: number): Pair[] {
  const pairs: Pair[] = [];
  const sorted = [...spots].sort((p, q) => p.x - q.x);
  sorted.forEach((p, i) => {
    const { width } = p;
    if (width === null) return;
    const compare = (q: Spot): void => {
      if (q.width === null || isBehind(p, q)) return;
      pairs.push({ left: p.tray, right: q.tray, by: Math.max(q.x - (p.x + width), p.x - (q.x + q.width)) });
    };
    for (let j = i + 1; j < sorted.length; j++) {
      const q = sorted[j] as Spot;
      if (q.x > p.x + width + gap) break;
      compare(q);
    }
    behind.forEach(compare);
  });
  return pairs;
}

/** Of trays of unknown depth it is taken that they share the depth. */
function isBehind(p: Spot, q: Spot): boolean {
  if (p.depth === null || q.depth === null) return false;
  return p.y + p.depth <= q.y + TOUCH || q.y + q.depth <= p.y + TOUCH;
}

const opposite: Readonly<Record<Side, Side>> = { front: 'back', back: 'front', left: 'right', right: 'left' };

/** Trays that stand on the same board from the opposite side of a shelf without a divider, seen from this side. */
function fromOtherSide(scene: Scene, side: SceneSide, board: SceneBoard): Spot[] {
  if (side.piece.divider || board.level === null) return [];
  const other = scene.sides.find((s) => s.piece === side.piece && s.side === opposite[side.side]);
  const same = other?.boards.find((b) => b.level === board.level);
  // Said once, on the side that a child meets first.
  if (!other || !same || scene.sides.indexOf(other) < scene.sides.indexOf(side)) return [];
  const through = side.side === 'left' || side.side === 'right' ? side.piece.width : side.piece.depth;
  return same.trays.map((tray) => ({
    tray,
    x: same.width - tray.placement.x - (tray.width ?? 0),
    y: through - same.setBack - tray.placement.y - (tray.depth ?? 0) - board.setBack,
    width: tray.width,
    depth: tray.depth,
  }));
}

/** Over which edges a tray that would fit sticks out. */
function hangsOf(tray: SceneTray, board: SceneBoard): (Excess & { end: BoardEnd })[] {
  const { x, y } = tray.placement;
  const ends: [BoardEnd, number][] = [];
  if (tray.width !== null && meets(board.width, tray.width)) ends.push(['left end', -x], ['right end', x + tray.width - board.width]);
  if (tray.depth !== null && meets(board.depth, tray.depth)) ends.push(['front', -y], ['back', y + tray.depth - board.depth]);
  return ends.filter(([, by]) => !meets(0, by)).map(([end, by]) => ({ tray, by, end }));
}

function lacksOf({ width, depth, height }: SceneTray, board: SceneBoard): string[] {
  const lacks: string[] = [];
  if (width === null) lacks.push('width');
  if (depth === null) lacks.push('depth');
  if (height === null && board.clear !== null) lacks.push('height');
  return lacks;
}
