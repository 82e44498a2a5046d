import type { Box } from '#model/geometry/polygon.ts';
import type { Point } from '#model/geometry/vec.ts';

/** How the plan lies on the screen: px = mm * k + (x, y). */
export interface Viewport {
  /** px per mm */
  readonly k: number;
  readonly x: number;
  readonly y: number;
}

export interface Size {
  readonly width: number;
  readonly height: number;
}

export interface Margins {
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
  readonly left: number;
}

/** px per mm: 1 mm never grows past a thumb, the room never shrinks to a stamp. */
const MOST = 0.8;
const LEAST = 0.004;

/** The whole room within the box, its drawing margins round it. */
export function fitRoom(bounds: Box, size: Size, margins: Margins): Viewport {
  const wide = Math.max(1, bounds.maxX - bounds.minX);
  const high = Math.max(1, bounds.maxY - bounds.minY);
  const roomX = Math.max(40, size.width - margins.left - margins.right);
  const roomY = Math.max(40, size.height - margins.top - margins.bottom);
  const k = clampScale(Math.min(roomX / wide, roomY / high));
  return {
    k,
    x: margins.left + (roomX - wide * k) / 2 - bounds.minX * k,
    y: margins.top + (roomY - high * k) / 2 - bounds.minY * k,
  };
}

export const toScreen = (view: Viewport, p: Point): Point => ({ x: p.x * view.k + view.x, y: p.y * view.k + view.y });
export const toPlan = (view: Viewport, p: Point): Point => ({ x: (p.x - view.x) / view.k, y: (p.y - view.y) / view.k });

/** Enlarged about a point of the screen, which stays where it is. */
export function zoomAbout(view: Viewport, at: Point, factor: number): Viewport {
  const k = clampScale(view.k * factor);
  const real = k / view.k;
  return { k, x: at.x - (at.x - view.x) * real, y: at.y - (at.y - view.y) * real };
}

export const panBy = (view: Viewport, by: Point): Viewport => ({ ...view, x: view.x + by.x, y: view.y + by.y });

/** Keeps a corner of the room on the sheet: a drawing pushed away is as bad as a lost one. */
export function keepInSight(view: Viewport, bounds: Box, size: Size): Viewport {
  const margin = Math.min(80, size.width / 4, size.height / 4);
  const clamp = (at: number, low: number, high: number): number => Math.min(high, Math.max(low, at));
  return {
    k: view.k,
    x: clamp(view.x, margin - bounds.maxX * view.k, size.width - margin - bounds.minX * view.k),
    y: clamp(view.y, margin - bounds.maxY * view.k, size.height - margin - bounds.minY * view.k),
  };
}

/** Two fingers: what lay under them stays under them. */
export function pinch(view: Viewport, from: readonly [Point, Point], to: readonly [Point, Point]): Viewport {
  const spread = ([p, q]: readonly [Point, Point]): number => Math.max(1, Math.hypot(p.x - q.x, p.y - q.y));
  const middle = ([p, q]: readonly [Point, Point]): Point => ({ x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 });
  const start = middle(from);
  const end = middle(to);
  return panBy(zoomAbout(view, start, spread(to) / spread(from)), { x: end.x - start.x, y: end.y - start.y });
}

const clampScale = (k: number): number => Math.min(MOST, Math.max(LEAST, k));
