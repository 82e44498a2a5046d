import type { Commands } from '#model/document/types.ts';
import type { Classroom } from '#model/schema/types.ts';

/** What each part of "The class" works with. */
export interface Part {
  readonly classroom: Classroom;
  readonly change: Commands['changeClass'];
}
