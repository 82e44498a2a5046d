/** Figures of the move day. All of them are common practice, no source: a class may keep to others of its own. */

/** kg that one adult lifts and carries about all morning, the crate's own weight left out. */
export const CRATE_KG = 10;
/** mm, inside of a crate; trays lie in it in so many layers. */
export const CRATE = { long: 600, wide: 400, layers: 2 } as const;
/** kg that a tray counts with while its mass is not known. */
export const TRAY_KG = 1;
/** mm: a piece as long or as high as this is moved by two people. */
export const TWO_PEOPLE = { long: 1200, high: 1000 } as const;
/** mm before an exit, as wide as its opening, on which nothing is set aside. */
export const EXIT_FLOOR = 1200;
/** mm: closer than this counts as touching. */
export const TOUCHING = 1;
/** Trays that are taken down, or put back, before a step is another step. */
export const TRAYS_A_STEP = 60;
