// Sizes that all parts of a drawn front go by: what is drawn, what names keep clear of, and what is printed.

/** px of letters of a name, and of one line of it */
export const NAME_SIZE = 10;
export const NAME_LINE = 11.2;
/** Lines that a name takes at most. */
export const MOST_LINES = 3;
/** px: boards and trays are drawn at least so high, whatever the scale; a flat tray still holds its number */
export const LEAST_TRAY = 13;
export const LEAST_BOARD = 2.5;
/** mm of a board's thickness and of a tray's rim */
export const BOARD_MM = 20;
export const RIM_MM = 32;
