import type { Piece, Placement, Room } from '../schema/types.ts';

/**
 * A change as plain data. Rules propose edits, `document` applies them (so that taking back and
 * merging work), `applyEdits` applies them to a plain classroom for tests and previews.
 * Lengths in mm, rotations in degrees clockwise.
 */
export type Edit =
  | { readonly do: 'move-piece'; readonly piece: string; readonly x: number; readonly y: number; readonly rotation?: number }
  | { readonly do: 'change-piece'; readonly piece: string; readonly set: Partial<Piece> }
  | {
      readonly do: 'change-level';
      readonly piece: string;
      readonly level: string;
      readonly set: { readonly surface?: number; readonly clear?: number | null; readonly setBack?: number };
    }
  | { readonly do: 'place'; readonly placement: Placement }
  /** Back on the table: the material keeps everything but its place. */
  | { readonly do: 'put-away'; readonly material: string }
  | { readonly do: 'move-corners'; readonly corners: Room['corners'] };

export interface Fix {
  /** "Do it: 12 to the west wall" */
  readonly label: string;
  readonly edits: readonly Edit[];
}
