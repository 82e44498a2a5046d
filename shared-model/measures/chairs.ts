/** mm from a table's edge to the middle of a chair pushed half under it. Common practice, no source. */
export const CHAIR_OUT = 90;

/** mm: a child's chair is as wide as deep; less where a side has more of them than have room. Common practice, no source. */
export const chairSize = (side: number, count: number): number => Math.min(340, (side / Math.max(1, count)) * 0.85);

/** More chairs than this on one side are neither drawn nor taken for floor: no table is that long, and a typing error of some thousands holds nobody up. */
export const chairsShown = (count: number): number => Math.min(count, 30);
