import type { Arrangement, Level, Material, Piece, Placement, Side } from '../schema/types.ts';
import type { SceneBoard, SceneBody, SceneSide, SceneTray } from './types.ts';

/** mm: a board this near below the top is the top, so nothing stands on a top of its own. */
const TOP_NEAR = 150;

interface Stands {
  sides: SceneSide[];
  stands: Map<string, SceneTray>;
}

/** Every open side of every shelf with its boards and trays, in file order. */
export function buildShelves(
  arrangement: Arrangement,
  bodyById: ReadonlyMap<string, SceneBody>,
  materialById: ReadonlyMap<string, Material>,
): Stands {
  const byPlace = new Map<string, { material: Material; placement: Placement }[]>();
  const stands = new Map<string, SceneTray>();
  for (const placement of arrangement.placements) {
    const material = materialById.get(placement.material);
    if (!material) continue;
    const piece = placement.piece === null ? undefined : bodyById.get(placement.piece)?.piece;
    // On a shelf that is gone the tray is on the table; anything else stands where it says.
    if (placement.piece !== null && !piece) continue;
    const board = piece?.kind === 'shelf' ? boardFor(piece, placement) : undefined;
    if (piece?.kind === 'shelf' && board === undefined) continue;
    if (!piece || board === undefined) {
      stands.set(material.id, { material, placement, board: null, ...sizeOf(material, placement) });
      continue;
    }
    const key = placeKey(piece.id, placement.side, board);
    const list = byPlace.get(key);
    if (list) list.push({ material, placement });
    else byPlace.set(key, [{ material, placement }]);
  }
  const sides = arrangement.pieces.flatMap((piece) => {
    const body = bodyById.get(piece.id);
    if (piece.kind !== 'shelf' || !body) return [];
    return piece.sides.map((side) => buildSide(body, piece, side, byPlace, stands));
  });
  return { sides, stands };
}

const placeKey = (piece: string, side: Side, level: Level | null): string => `${piece}/${side}/${level?.id ?? ''}`;

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

function buildSide(
  body: SceneBody,
  piece: Piece,
  side: Side,
  byPlace: ReadonlyMap<string, { material: Material; placement: Placement }[]>,
  stands: Map<string, SceneTray>,
): SceneSide {
  const isAcross = side === 'left' || side === 'right';
  const width = isAcross ? piece.depth : piece.width;
  const through = isAcross ? piece.width : piece.depth;
  const depth = piece.divider && piece.sides.includes(opposite[side]) ? through / 2 : through;
  const levels = highestFirst(piece);
  const planned: (Level | null)[] = topLevel(piece) ? levels : [null, ...levels];
  const boards = planned.flatMap((level): SceneBoard[] => {
    const found = byPlace.get(placeKey(piece.id, side, level)) ?? [];
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
    for (const tray of trays) stands.set(tray.material.id, tray);
    return [board];
  });
  return { body, piece, side, edge: body.edges[side], isForChildren: piece.for === 'children', width, boards };
}

const opposite: Readonly<Record<Side, Side>> = { front: 'back', back: 'front', left: 'right', right: 'left' };

function sizeOf(material: Material, placement: Placement) {
  return {
    width: placement.turned ? material.depth : material.width,
    depth: placement.turned ? material.width : material.depth,
    height: material.height,
  };
}
