import type { Point } from '../../geometry/vec.ts';

/** How far each moved unit stands from where it stood, mm; what is not in it has not moved. */
export type Layout = ReadonlyMap<string, Point>;

export const NOWHERE: Point = { x: 0, y: 0 };

export const at = (layout: Layout, unit: string): Point => layout.get(unit) ?? NOWHERE;

/** The same for two layouts that are the same. */
export const layoutKey = (layout: Layout): string =>
  [...layout]
    .map(([unit, { x, y }]) => `${unit}:${x},${y}`)
    .sort()
    .join(' ');

/** mm that all pieces are moved together. */
export const totalOf = (layout: Layout): number => [...layout.values()].reduce((sum, { x, y }) => sum + Math.hypot(x, y), 0);
