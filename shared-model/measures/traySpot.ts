import type { SceneSide, SceneTray } from '../scene/types.ts';
import type { Material } from '../schema/types.ts';
import { GRIP_ABOVE_BASE, WIDE_TAKE_DEPTH } from './reachCurves.ts';

/** A value known only to lie between two others (both ends included); alike when it is known. */
export interface Between {
  readonly low: number;
  readonly high: number;
}
const known = (value: number): Between => ({ low: value, high: value });

/** Where a tray stands or might stand on a shelf side; mm. */
export interface TraySpot {
  /** above the floor; null: the piece's height is not known */
  readonly surface: number | null;
  /** clear height above the surface; null: open */
  readonly clear: number | null;
  readonly setBack: number;
  readonly toeRecess: number;
  /** from the board's front edge to the tray's front edge */
  readonly y: number;
  /** free floor before the front; worked out when asked */
  readonly floor: () => Between;
}
export type TrayShape = Pick<SceneTray, 'material' | 'width' | 'depth' | 'height'>;

/**
 * How far behind the shelf's front the hand goes: half the tray's depth; for a tray wider than deep at most 120 of it
 * (class rule). Of a tray without a size only the least is known.
 */
export function takeDepth({ setBack, y }: Pick<TraySpot, 'setBack' | 'y'>, { width, depth }: TrayShape): Between {
  const front = setBack + y;
  if (depth === null) return { low: front, high: Infinity };
  const half = depth / 2;
  const near = Math.min(half, WIDE_TAKE_DEPTH);
  if (width === null) return { low: front + near, high: front + half };
  return known(front + (width > depth ? near : half));
}

/** Height of the grip above the thing's base: as given, else half its height, at most 50. */
export function gripAbove({ grip, height }: Pick<Material, 'grip' | 'height'>): Between {
  if (grip !== null) return known(grip);
  return height === null ? { low: 0, high: GRIP_ABOVE_BASE } : known(Math.min(GRIP_ABOVE_BASE, height / 2));
}

/** The middle of a tray, mm right of the left end of its shelf side. */
export function alongSide(side: Pick<SceneSide, 'width'>, boardWidth: number, x: number, trayWidth: number | null): number {
  return (side.width - boardWidth) / 2 + x + (trayWidth ?? 0) / 2;
}
