/**
 * Clear widths and spaces of accessible routes, mm as the standard prints them.
 * ADA Standards for Accessible Design, 2010 (all found, except where a line says so).
 */
export const accessibleRoutes = {
  /** A01, 403.5.1: clear width of a walking surface. */
  routeWidth: 915,
  /** A02, 403.5.1 exception: how narrow, for how long, and the full-width stretch between two pinches. */
  pinch: { width: 815, length: 610, apart: 1220 },
  /** A05, 304.3.1: turning circle, its diameter. */
  turningCircle: 1525,
  /** A06, 304.3.2: T-turn in a square, arms and base this wide, clear beside and below the base. */
  turningT: { square: 1525, arm: 915, besideBase: 305, alongBase: 610 },
  /** A07, 305.3: parking place for a wheelchair. */
  clearFloor: { width: 760, length: 1220 },
  /** A08, 305.7: the same, boxed in on three sides deeper than `ifDeeper`. */
  alcove: { forward: { width: 915, ifDeeper: 610 }, parallel: { width: 1525, ifDeeper: 380 } },
  /** A09, 404.2.3: clear opening of a doorway, wider where the opening is deep. */
  doorway: { width: 815, deepOver: 610, deepWidth: 915 },
} as const;

/** Floor beside a door: out from it, and beyond its latch or hinge side; mm. */
export interface ManoeuvringSpace {
  readonly approach: 'front' | 'hinge' | 'latch';
  readonly side: 'pull' | 'push';
  readonly depth: number;
  readonly besideLatch?: number;
  readonly besideHinge?: number;
  /** Beside the latch, where the door has a closer and a latch. */
  readonly besideLatchWithCloser?: number;
  /** Depth where the door has a closer (on the push side of a hinge approach: a closer and a latch). */
  readonly depthWithCloser?: number;
  readonly isFromMemory?: true;
}

/** A10, 404.2.4, table 404.2.4.1: manual swinging doors. */
export const manoeuvringSpaces: readonly ManoeuvringSpace[] = [
  { approach: 'front', side: 'pull', depth: 1525, besideLatch: 455 },
  { approach: 'front', side: 'push', depth: 1220, besideLatch: 0, besideLatchWithCloser: 305 },
  { approach: 'hinge', side: 'pull', depth: 1525, besideLatch: 915 },
  { approach: 'hinge', side: 'pull', depth: 1370, besideLatch: 1065, isFromMemory: true },
  { approach: 'hinge', side: 'push', depth: 1065, depthWithCloser: 1220, besideHinge: 560 },
  { approach: 'latch', side: 'pull', depth: 1220, depthWithCloser: 1370, besideLatch: 610 },
  { approach: 'latch', side: 'push', depth: 1065, depthWithCloser: 1220, besideLatch: 610 },
];
