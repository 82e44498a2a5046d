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

/** Between what a fix does and what comes with it, in its label. */
const BRINGS = '. It brings with it: ';

/** The label of a fix that brings findings, each in a sentence. */
export const labelWith = (label: string, brings: readonly string[]): string =>
  brings.length === 0 ? label : `${label.replace(/\.$/, '')}${BRINGS}${brings.join(' ')}`;

/** A label in its two parts; `brings` null: nothing comes with it, as far as it was tried. */
export function labelParts(label: string): { readonly does: string; readonly brings: string | null } {
  const at = label.indexOf(BRINGS);
  return at === -1 ? { does: label, brings: null } : { does: label.slice(0, at), brings: label.slice(at + 2) };
}
