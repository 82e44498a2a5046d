/** Limits of a classroom file. They keep a broken or hostile file from stalling a tablet. */
export const limits = {
  fileBytes: 16 * 1024 * 1024,
  corners: 500,
  pieces: 1_000,
  materials: 5_000,
  arrangements: 50,
  levels: 30,
  list: 1_000,
  text: 2_000,
  /** mm: a room is never a kilometre wide. */
  coordinate: 1_000_000,
  /** mm */
  size: 100_000,
} as const;
