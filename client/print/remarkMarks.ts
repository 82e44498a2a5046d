import { type Box, boundingBox, boxesMeet } from '#model/geometry/polygon.ts';
import { add, type Point } from '#model/geometry/vec.ts';
import type { Scene } from '#model/scene/types.ts';
import { type NumberedRemark, numberedRemarks, remarkPlace, remarkWords } from '../plan/remarks.ts';
import type { FlowRow } from './flow.ts';
import { cornersOfWords, line, type Mark, type Measure, rect, weights, words } from './marks.ts';
import type { PaperPen } from './paperPen.ts';
import { headRow, spaceRow, tableRows } from './table.ts';

/** mm: half the box of a number, and how far from its place it may stand */
const HALF = 1.7;
const FAR: readonly number[] = [4, 5.5, 7.5, 10];
const TURNS: readonly number[] = [-45, 45, -135, 135, -90, 90, 0, 180];

/** Remarks that are not done. */
export const openRemarks = ({ classroom }: Scene): NumberedRemark[] => numberedRemarks(classroom.notes).filter(({ note }) => !note.done);

/** A boxed number at each remark, beside words and other numbers. `near`: mm of the room that is drawn. */
export function remarkMarks(pen: PaperPen, scene: Scene, drawn: readonly Mark[], near: Box): Mark[] {
  const taken: Box[] = drawn.flatMap((mark) => (mark.kind === 'words' ? [boundingBox(cornersOfWords(mark, pen.measure))] : []));
  return openRemarks(scene).flatMap((remark) => {
    const number = String(remark.number);
    const place = remarkPlace(remark.note, (id) => scene.bodyById.get(id));
    if (place.x < near.minX || place.x > near.maxX || place.y < near.minY || place.y > near.maxY) return [];
    const at = pen.at(place);
    const box = (p: Point): Box => ({ minX: p.x - HALF, minY: p.y - HALF, maxX: p.x + HALF, maxY: p.y + HALF });
    const places = FAR.flatMap((far) =>
      TURNS.map((turn) => add(at, { x: far * Math.cos((turn * Math.PI) / 180), y: far * Math.sin((turn * Math.PI) / 180) })),
    );
    const center = places.find((p) => !taken.some((other) => boxesMeet(other, box(p)))) ?? (places[0] as Point);
    // From the middle of a thing the line would strike through its number.
    const isOnWords = taken.some(({ minX, minY, maxX, maxY }) => at.x > minX && at.x < maxX && at.y > minY && at.y < maxY);
    taken.push(box(center));
    return [
      ...(isOnWords ? [] : [line([at, center], { weight: weights.dimension })]),
      rect(center.x - HALF, center.y - HALF, 2 * HALF, 2 * HALF, { weight: weights.outline, fill: 'white' }),
      words(number, center.x, center.y, { size: number.length > 2 ? 1.7 : 2.2, weight: 650, align: 'middle', isItalic: true }),
    ];
  });
}

/** The list that the numbers on the plan refer to. `size`: mm of its letters. */
export function remarkRows(scene: Scene, measure: Measure, width: number, size: number): FlowRow[] {
  const open = openRemarks(scene);
  if (open.length === 0) return [];
  const [no, by] = [7, 14];
  const columns = [
    { title: 'No', width: no },
    { title: 'Remark', width: width - no - by },
    { title: 'By', width: by },
  ];
  const cells = open.map(({ note, number }) => [String(number), remarkWords(note, scene), note.by]);
  return [spaceRow(2.5), headRow('Remarks', width), ...tableRows({ measure, size, columns }, cells)];
}
