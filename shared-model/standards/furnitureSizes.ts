/** A size mark of school chairs and tables; mm. */
export interface FurnitureSize {
  readonly mark: number;
  readonly stature: readonly [from: number, to: number];
  /** Hollow of the knee above the floor; null: open above. */
  readonly popliteal: readonly [from: number, to: number | null];
  readonly seat: number;
  readonly table: number;
  readonly isFromMemory?: true;
}

/**
 * D01: EN 1729-1, table 1, 2006 figures (seat and table heights of marks 1 to 6 found in a purchasing guide; marks 0
 * and 7 and the top of mark 1, which dealers print as 1150, from memory). Recommended, no law.
 */
export const furnitureSizes: readonly FurnitureSize[] = [
  { mark: 0, stature: [800, 950], popliteal: [200, 250], seat: 210, table: 400, isFromMemory: true },
  { mark: 1, stature: [930, 1160], popliteal: [250, 280], seat: 260, table: 460 },
  { mark: 2, stature: [1080, 1210], popliteal: [280, 315], seat: 310, table: 530 },
  { mark: 3, stature: [1190, 1420], popliteal: [315, 355], seat: 350, table: 590 },
  { mark: 4, stature: [1330, 1590], popliteal: [355, 405], seat: 380, table: 640 },
  { mark: 5, stature: [1460, 1765], popliteal: [405, 435], seat: 430, table: 710 },
  { mark: 6, stature: [1590, 1880], popliteal: [435, 485], seat: 460, table: 760 },
  { mark: 7, stature: [1740, 2070], popliteal: [485, null], seat: 510, table: 820, isFromMemory: true },
];
