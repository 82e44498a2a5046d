import type { Arrangement, Level, Material, Piece, Placement, Side } from '../schema/types.ts';
import { pieceBody } from './bodies.ts';
import { keptWith } from './kept.ts';
import type { OpenSide, SceneBoard, SceneBody, SceneSide, SceneTray } from './types.ts';

/** mm: a board this near below the top is the top, so nothing stands on a top of its own. */
const TOP_NEAR = 150;

interface Stands {
  sides: SceneSide[];
  stands: Map<string, SceneTray>;
}

/** A material on a board of a shelf; null: its top. */
interface Standing {
  readonly material: Material;
  readonly placement: Placement;
  readonly level: Level | null;
}

/** Every open side of every shelf with its boards and trays, in file order. */
export function buildShelves(
  arrangement: Arrangement,
  bodyById: ReadonlyMap<string, SceneBody>,
  materialById: ReadonlyMap<string, Material>,
): Stands {
  const byShelf = new Map<string, Standing[]>();
  const stands = new Map<string, SceneTray>();
  for (const placement of arrangement.placements) {
    const material = materialById.get(placement.material);
    if (!material) continue;
    const piece = placement.piece === null ? undefined : bodyById.get(placement.piece)?.piece;
    // On a shelf that is gone the tray is on the table; anything else stands where it says.
    if (placement.piece !== null && !piece) continue;
    const level = piece?.kind === 'shelf' ? boardFor(piece, placement) : undefined;
    if (piece?.kind === 'shelf' && level === undefined) continue;
    if (!piece || level === undefined) {
      stands.set(material.id, offBoard(material, placement));
      continue;
    }
    const list = byShelf.get(piece.id);
    if (list) list.push({ material, placement, level });
    else byShelf.set(piece.id, [{ material, placement, level }]);
  }
  const sides = arrangement.pieces.flatMap((piece) => (piece.kind === 'shelf' ? shelfSides(piece, byShelf.get(piece.id) ?? []) : []));
  for (const { boards } of sides) for (const { trays } of boards) for (const tray of trays) stands.set(tray.material.id, tray);
  return { sides, stands };
}

const keptOff = new WeakMap<Placement, SceneTray>();

function offBoard(material: Material, placement: Placement): SceneTray {
  const before = keptOff.get(placement);
  if (before?.material === material) return before;
  const tray = { material, placement, board: null, ...sizeOf(material, placement) };
  keptOff.set(placement, tray);
  return tray;
}

const kept = new WeakMap<Piece, { readonly standing: readonly Standing[]; readonly sides: readonly SceneSide[] }>();

/** The sides of one shelf: those of before as long as neither the shelf nor anything on it changed. */
function shelfSides(piece: Piece, standing: readonly Standing[]): readonly SceneSide[] {
  const before = kept.get(piece);
  if (before && isSameStanding(before.standing, standing)) return before.sides;
  const byPlace = new Map<string, Standing[]>();
  for (const one of standing) {
    const key = placeKey(one.placement.side, one.level);
    const list = byPlace.get(key);
    if (list) list.push(one);
    else byPlace.set(key, [one]);
  }
  // A file may name a side twice.
  const sides = [...new Set(piece.sides)].map((side) => buildSide(piece, side, byPlace));
  kept.set(piece, { standing, sides });
  return sides;
}

const isSameStanding = (p: readonly Standing[], q: readonly Standing[]): boolean =>
  p.length === q.length && p.every((one, k) => one.material === q[k]?.material && one.placement === q[k]?.placement);

const placeKey = (side: Side, level: Level | null): string => `${side}/${level?.id ?? ''}`;

/** The board a placement means; null: the piece's top; undefined: a board that is gone or a side that is not open. */
function boardFor(piece: Piece, placement: Placement): Level | null | undefined {
  if (!piece.sides.includes(placement.side)) return undefined;
  if (placement.level !== null) return piece.levels.find((l) => l.id === placement.level);
  return topLevel(piece) ?? null;
}

/** The board that serves as the piece's top, if one lies near enough. */
function topLevel(piece: Piece): Level | undefined {
  const highest = highestFirst(piece)[0];
  if (!highest || piece.height === null) return undefined;
  return highest.surface >= piece.height - TOP_NEAR ? highest : undefined;
}

const highestFirst = (piece: Piece): Level[] => [...piece.levels].sort((p, q) => q.surface - p.surface);

function buildSide(piece: Piece, side: Side, byPlace: ReadonlyMap<string, readonly Standing[]>): SceneSide {
  const isAcross = side === 'left' || side === 'right';
  const { width } = openSides(piece)[side];
  const through = isAcross ? piece.width : piece.depth;
  const depth = piece.divider && piece.sides.includes(opposite[side]) ? through / 2 : through;
  const levels = highestFirst(piece);
  const planned: (Level | null)[] = topLevel(piece) ? levels : [null, ...levels];
  const boards = planned.flatMap((level): SceneBoard[] => {
    const found = byPlace.get(placeKey(side, level)) ?? [];
    // The bare top is a board only once something stands on it.
    if (level === null && found.length === 0) return [];
    const above = level === null ? undefined : levels[levels.indexOf(level) - 1];
    const isTop = level === null || (piece.height !== null && level.surface >= piece.height - 1);
    const trays: SceneTray[] = [];
    const board: SceneBoard = {
      piece,
      side,
      level,
      surface: level === null ? piece.height : level.surface,
      width: Math.max(0, isTop ? width : width - 2 * piece.panel),
      depth: level?.depth ?? Math.max(0, depth - (level?.setBack ?? 0)),
      setBack: level?.setBack ?? 0,
      clear: level === null ? null : (level.clear ?? (above ? Math.max(0, above.surface - piece.panel - level.surface) : null)),
      trays,
    };
    for (const { material, placement } of found) trays.push({ material, placement, board, ...sizeOf(material, placement) });
    trays.sort((p, q) => p.placement.x - q.placement.x || (p.material.id < q.material.id ? -1 : 1));
    return [board];
  });
  const open = openSides(piece)[side];
  return { ...open, open, boards };
}

const openSides = keptWith((piece: Piece): Readonly<Record<Side, OpenSide>> => {
  const body = pieceBody(piece);
  const open = (side: Side, width: number): OpenSide => ({
    body,
    piece,
    side,
    edge: body.edges[side],
    isForChildren: piece.for === 'children',
    width,
  });
  const { width, depth } = piece;
  return { front: open('front', width), back: open('back', width), left: open('left', depth), right: open('right', depth) };
});

const opposite: Readonly<Record<Side, Side>> = { front: 'back', back: 'front', left: 'right', right: 'left' };

function sizeOf(material: Material, placement: Placement) {
  return {
    width: placement.turned ? material.depth : material.width,
    depth: placement.turned ? material.width : material.depth,
    height: material.height,
  };
}
