/** mm: how far a piece is moved at most, unless it goes to the nearest wall. */
export const FARTHEST = 500;
/** mm: between the places of the grid. */
export const GRID = 100;
