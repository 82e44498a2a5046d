import type { Scene } from '../scene/types.ts';
import { access as accessSchema } from '../schema/classroom.ts';
import { leastThatMeets, meets } from '../units/compare.ts';

const printed = accessSchema.parse({});

/** mm: full-width floor between two pinches, 48 in (A02). */
const BETWEEN_PINCHES = 1220;

/** The figures a class asks of its ways, and which of them are the printed defaults. mm. */
export interface AccessFigures {
  /** A fixed accessible route, or somebody who uses a wheelchair. */
  readonly isRequired: boolean;
  readonly routeWidth: number;
  readonly leastWidth: number;
  readonly isRoutePrinted: boolean;
  readonly isLeastPrinted: boolean;
  /** The least width that still passes for the route: 914.4 where 915 is the printed default. */
  readonly routeMeets: number;
  readonly pinchMeets: number;
  readonly pinchLength: number;
  readonly betweenPinches: number;
}

export function accessFigures(scene: Scene): AccessFigures {
  const { access } = scene.classroom;
  const isPrinted = (key: 'routeWidth' | 'leastWidth' | 'pinchWidth'): boolean => access[key] === printed[key];
  return {
    isRequired: access.required || access.wheelchair,
    routeWidth: access.routeWidth,
    leastWidth: access.leastWidth,
    isRoutePrinted: isPrinted('routeWidth'),
    isLeastPrinted: isPrinted('leastWidth'),
    routeMeets: leastThatMeets(access.routeWidth, isPrinted('routeWidth')),
    pinchMeets: leastThatMeets(access.pinchWidth, isPrinted('pinchWidth')),
    pinchLength: access.pinchLength,
    betweenPinches: leastThatMeets(BETWEEN_PINCHES, true),
  };
}

export interface Shortfall {
  readonly severity: 'must' | 'should';
  /** mm */
  readonly needed: number;
}

/** How far below what is asked a way is (mm); null: it meets it. */
export function shortfallOf(width: number, figures: AccessFigures): Shortfall | null {
  const { isRequired, routeWidth, leastWidth } = figures;
  if (!isRequired && !meets(width, leastWidth, figures.isLeastPrinted)) return { severity: 'must', needed: leastWidth };
  if (meets(width, routeWidth, figures.isRoutePrinted)) return null;
  return { severity: isRequired ? 'must' : 'should', needed: routeWidth };
}
