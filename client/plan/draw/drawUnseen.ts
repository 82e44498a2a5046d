import { colours } from '#client/styles/tokens.ts';
import { contains } from '#model/geometry/polygon.ts';
import type { UnseenPatch } from '../reportParts.ts';
import { middlesOf } from '../unseen.ts';
import { hatch } from './hatch.ts';
import { at, type Pen, path, stroke, widthOf, write } from './pen.ts';
import { cornersOfBox, firstClear, type WordBox } from './wordPlace.ts';

const SIZE = 10.5;
const STEP = 6;

/** Floor that is not seen, hatched. `strength`: 0 to 1. */
export function drawUnseen(pen: Pen, patches: readonly UnseenPatch[], strength = 1): void {
  pen.ctx.globalAlpha = strength;
  for (const { outline, holes } of patches) {
    const ring = outline.map((p) => at(pen, p));
    hatch(
      pen,
      ring,
      'unseen',
      colours.pencil,
      STEP,
      holes.map((hole) => hole.map((p) => at(pen, p))),
    );
    path(pen, ring);
    stroke(pen, { colour: colours.pencil, width: 0.8, dash: [2, 3] });
  }
  pen.ctx.globalAlpha = 1;
}

/** The words once, on the largest patch that holds them whole; shorter ones where none does. `taken`: px. */
export function drawUnseenWords(
  pen: Pen,
  patches: readonly UnseenPatch[],
  texts: readonly string[],
  taken: readonly WordBox[],
  isAllowed: (box: WordBox) => boolean,
): void {
  for (const text of texts) {
    const words = { width: widthOf(pen, text, SIZE) + 6, size: SIZE + 3 };
    for (const patch of patches) {
      const ring = patch.outline.map((p) => at(pen, p));
      const isWithin = (box: WordBox): boolean => isAllowed(box) && cornersOfBox(box).every((p) => contains(ring, p));
      const places = middlesOf(patch).map((p) => ({ where: at(pen, p), align: 'center' as const }));
      const place = firstClear(places, words, taken, isWithin);
      if (!place) continue;
      write(pen, text, place.where, { size: SIZE, colour: colours.pencilText, ground: colours.leaf });
      return;
    }
  }
}
