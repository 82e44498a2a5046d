/** How mm of a shelf front come to lie on the screen. Heights run up from the floor, pixels run down. */
export interface FrontView {
  /** px per mm */
  readonly scale: number;
  readonly toX: (mm: number) => number;
  readonly toY: (mmAboveFloor: number) => number;
  readonly fromX: (px: number) => number;
  readonly fromY: (px: number) => number;
  readonly width: number;
  readonly height: number;
  /** px beside the shelf for the staff and for the lines' names */
  readonly staffAt: number;
  readonly labelsWidth: number;
}

export interface FrontSpace {
  /** px of the drawing */
  readonly width: number;
  readonly height: number;
  /** mm of the shelf and of the highest line or tray */
  readonly shelf: number;
  readonly top: number;
  readonly isMirrored: boolean;
}

const STAFF = 46;
const PAD_TOP = 12;
/** the floor, the reading arrow and the names under a board near the floor */
const PAD_BOTTOM = 50;

/** px: narrower than this the lines' names stand below the drawing */
const NARROW = 520;
/** px at that side all the same, for the boards' grips */
const NO_NAMES = 16;

export const isNarrow = (width: number): boolean => width < NARROW;

/** px of height that a front needs to fill a width (px), at most `most`. */
export function heightFor(width: number, shelf: number, top: number, most: number): number {
  const room = Math.max(40, width - STAFF - NO_NAMES - 12);
  return Math.min(most, Math.ceil((room / Math.max(1, shelf)) * top) + PAD_TOP + PAD_BOTTOM + 4);
}

/** Fits a front into its space, true to scale both ways. Read right to left, staff and names change sides; the shelf does not. */
export function frontView(space: FrontSpace): FrontView {
  const names = isNarrow(space.width) ? NO_NAMES : 134;
  const room = Math.max(40, space.width - STAFF - names - 12);
  const tall = Math.max(40, space.height - PAD_TOP - PAD_BOTTOM);
  const scale = Math.min(room / Math.max(1, space.shelf), tall / Math.max(1, space.top));
  const before = space.isMirrored ? Math.max(names, space.width - STAFF - space.shelf * scale - 24) : STAFF;
  const shelfLeft = before + 6;
  const floor = Math.min(space.height - PAD_BOTTOM, PAD_TOP + space.top * scale + 24);
  const shelfRight = shelfLeft + space.shelf * scale;
  return {
    scale,
    toX: (mm) => shelfLeft + mm * scale,
    toY: (mm) => floor - mm * scale,
    fromX: (px) => (px - shelfLeft) / scale,
    fromY: (px) => (floor - px) / scale,
    width: space.width,
    height: space.height,
    staffAt: space.isMirrored ? shelfRight + 14 : shelfLeft - 26,
    labelsWidth: Math.max(names, space.isMirrored ? shelfLeft - 14 : space.width - shelfRight - 16),
  };
}
