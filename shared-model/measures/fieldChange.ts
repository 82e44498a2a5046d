import type { Part } from '../geometry/parts.ts';
import type { Box } from '../geometry/polygon.ts';

/** What stands in the way differently than before. */
export interface FieldChange {
  /** By index of before the index of now; -1: the part is gone. */
  readonly indexOf: Int32Array;
  /** Some part that stayed has another index. */
  readonly isShifted: boolean;
  /** Indices of now of the parts that are new. */
  readonly fresh: readonly number[];
  /** Boxes of all that came or went. */
  readonly boxes: Box[];
}

/** Null: the parts that stayed stand in another order, which decides between equals, so nothing can be taken over. */
export function changeOfParts(before: readonly Part[], now: readonly Part[]): FieldChange | null {
  const indexOf = new Int32Array(before.length).fill(-1);
  const fresh: number[] = [];
  const boxes: Box[] = [];
  let places: Map<Part, number> | null = null;
  let last = -1;
  let isShifted = false;
  for (let i = 0; i < now.length; i++) {
    const part = now[i] as Part;
    let old: number | undefined = i;
    if (before[i] !== part) {
      places ??= new Map(before.map((one, index) => [one, index]));
      old = places.get(part);
    }
    if (old === undefined) {
      fresh.push(i);
      boxes.push(part);
      continue;
    }
    if (old <= last) return null;
    last = old;
    indexOf[old] = i;
    if (old !== i) isShifted = true;
  }
  for (let old = 0; old < before.length; old++) if (indexOf[old] === -1) boxes.push(before[old] as Part);
  return { indexOf, isShifted, fresh, boxes };
}
