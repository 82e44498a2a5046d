import type { SceneTray, ShelvesScene } from '../../scene/types.ts';
import type { Placement } from '../../schema/types.ts';
import { sideOf } from '../placeWords.ts';
import type { InsertBy, Mending, NewPlace } from './insertion.ts';
import type { OrderRelation } from './relation.ts';
import { standSize, tooDeepBy, tooTallBy } from './workShelves.ts';

/** Two trays in each other's place, where both fit there with the wanted gap and nothing else moves; null: they do not. */
export function exchange(scene: ShelvesScene, { reading }: OrderRelation, one: number, other: number, by: InsertBy): Mending | null {
  const [p, q] = [reading[one], reading[other]];
  if (!p || !q) return null;
  const places = [placeAt(scene, p, q, by), placeAt(scene, q, p, by)];
  const [first, second] = places;
  if (!first || !second || isOnEachOther(first.placement, p, second.placement, q, by.gap)) return null;
  const swapped = reading.map(({ material }) => (material === p.material ? q : material === q.material ? p : { material }).material.id);
  return {
    moves: [one, other].sort((a, b) => a - b),
    places: [first.place, second.place],
    shortages: [],
    placements: [first.placement, second.placement],
    isSqueezed: false,
    isBeyondReach: !first.isInReach || !second.isInReach,
    readAfter: () => swapped,
  };
}

/** On one board the wider of the two may reach into the other's new place, or leave less than the gap that was there before. */
function isOnEachOther(first: Placement, p: SceneTray, second: Placement, q: SceneTray, gap: number): boolean {
  if (p.board !== q.board) return false;
  const [left, wide, right] = first.x < second.x ? [first.x, p.width ?? 0, second.x] : [second.x, q.width ?? 0, first.x];
  const was = first.x < second.x ? (q.width ?? 0) : (p.width ?? 0);
  return wide > was && left + wide + gap > right;
}

/** `tray` where `there` stands now. */
function placeAt(
  scene: ShelvesScene,
  tray: SceneTray,
  there: SceneTray,
  { gap, isInReach }: InsertBy,
): { readonly place: NewPlace; readonly placement: Placement; readonly isInReach: boolean } | null {
  const { board } = there;
  const side = board && sideOf(scene, board);
  if (!board || !side || tray.width === null || there.width === null) return null;
  const size = standSize(tray.material, tray.placement.turned);
  if (tooDeepBy(size, board) > 0 || tooTallBy(size, board) > 0) return null;
  const x = there.placement.x;
  const next = board.trays
    .filter((other) => other !== there && other !== tray && other.placement.x > x)
    .map((other) => other.placement.x - gap);
  // No further than what stood there, or than leaves the wanted gap.
  if (x + tray.width > Math.max(x + there.width, Math.min(board.width, ...next))) return null;
  const neighbour = board.trays[board.trays.indexOf(there) - 1];
  // Who stood to the left is where this one was, if this one itself stood there.
  const behind = neighbour === tray ? there : neighbour;
  return {
    place: { material: tray.material.id, side, board, x, behind: behind?.material.id ?? null },
    placement: { ...tray.placement, piece: board.piece.id, side: board.side, level: board.level?.id ?? null, x, y: 0 },
    isInReach: isInReach(tray, side, board, x),
  };
}
