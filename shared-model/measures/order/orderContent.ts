import type { SceneSide, ShelvesScene } from '../../scene/types.ts';
import type { Classroom, Piece } from '../../schema/types.ts';
import { joinsPracticalLife, judgesPracticalLife, trayGapOf } from './classOptions.ts';

/** All that the order of what stands on shelves goes by. Where on the floor a shelf stands is none of it. */
export interface OrderContent {
  readonly materials: Classroom['materials'];
  readonly children: Classroom['children'];
  readonly settings: readonly unknown[];
  readonly sides: readonly SceneSide[];
}

export const orderContent = ({ classroom, sides }: ShelvesScene): OrderContent => ({
  materials: classroom.materials,
  children: classroom.children,
  settings: [trayGapOf(classroom), judgesPracticalLife(classroom), joinsPracticalLife(classroom), classroom.display.readingDirection],
  sides,
});

/** True when the order of the one is the order of the other, wherever their shelves stand. */
export const isSameContent = (p: OrderContent, q: OrderContent): boolean =>
  p.materials === q.materials &&
  p.children === q.children &&
  p.settings.every((setting, i) => setting === q.settings[i]) &&
  p.sides.length === q.sides.length &&
  p.sides.every((side, i) => isSameSide(side, q.sides[i] as SceneSide));

const isSameSide = (p: SceneSide, q: SceneSide): boolean =>
  p === q ||
  (p.side === q.side &&
    isSamePiece(p.piece, q.piece) &&
    p.boards.length === q.boards.length &&
    p.boards.every(({ trays }, b) => {
      const others = q.boards[b]?.trays ?? [];
      return trays.length === others.length && trays.every((tray, t) => tray.placement === others[t]?.placement);
    }));

/** But for where it stands, and how it is turned. */
function isSamePiece(p: Piece, q: Piece): boolean {
  const keys = Object.keys(p) as (keyof Piece)[];
  if (keys.length !== Object.keys(q).length) return false;
  return keys.every((key) => key === 'x' || key === 'y' || key === 'rotation' || isSame(p[key], q[key]));
}

/** Values as a file holds them. */
function isSame(p: unknown, q: unknown): boolean {
  if (Object.is(p, q)) return true;
  if (typeof p !== 'object' || typeof q !== 'object' || p === null || q === null) return false;
  const keys = Object.keys(p);
  return (
    Array.isArray(p) === Array.isArray(q) &&
    keys.length === Object.keys(q).length &&
    keys.every((key) => isSame((p as Record<string, unknown>)[key], (q as Record<string, unknown>)[key]))
  );
}
