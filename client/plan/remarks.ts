import type { Box } from '#model/geometry/polygon.ts';
import type { Point } from '#model/geometry/vec.ts';
import type { Scene } from '#model/scene/types.ts';
import type { Note } from '#model/schema/types.ts';
import { shelfWords } from '../front/shelfNames.ts';
import { capital } from '../text/sayList.ts';

/** A remark with the number that it bears on the drawing, in the list and on paper. */
export interface NumberedRemark {
  readonly note: Note;
  /** From 1, in the order of the file. */
  readonly number: number;
}

/** px from the place that a remark is about to its number's box on the drawing */
export const REMARK_BOX: Box = { minX: 7, minY: -18, maxX: 23, maxY: -4 };

export const numberedRemarks = (notes: readonly Note[]): NumberedRemark[] => notes.map((note, i) => ({ note, number: i + 1 }));

/** Where it stands on the plan (mm): on the thing it is about as long as that is there, else where it was put. */
export const remarkPlace = (note: Note, bodyById: (id: string) => { readonly center: Point } | undefined): Point =>
  (note.on === null ? undefined : bodyById(note.on)?.center) ?? note;

/** "Shelf 7: Is it steady?" */
export function remarkWords({ on, text }: Note, scene: Scene): string {
  return on !== null && scene.bodyById.has(on) ? `${capital(shelfWords(scene, on))}: ${text}` : text;
}
