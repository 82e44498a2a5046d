import { colours, dashes } from '#client/styles/tokens.ts';
import type { Edit } from '#model/findings/edit.ts';
import { add, distance, dot, type Point, scale, sub, unit } from '#model/geometry/vec.ts';
import { pieceBody } from '#model/scene/bodies.ts';
import { pieceNumbers } from '#model/schema/pieceNumbers.ts';
import type { Piece } from '#model/schema/types.ts';
import { sayLength } from '#model/units/sayLength.ts';
import { cornersOf } from '../box.ts';
import { chairsOf } from '../chairs.ts';
import type { PlanModel } from '../planModel.ts';
import { drawArrowHead } from './drawMarks.ts';
import { ringOf } from './drawShape.ts';
import { at, line, type Pen, path, stroke, widthOf, write } from './pen.ts';
import { onFloor, takenByMarks, takenOnFloor } from './takenOnFloor.ts';
import { boxAround, boxOfWords, firstClear, type WordBox, type WordPlace } from './wordPlace.ts';

/** px */
const SIZE = 11.5;
const WEIGHT = 650;
/** px of the ground beside the words */
const GROUND = 3;
/** px between an arrow or a thing and its length */
const AIR = 5;
/** px: farther off than this a length is not taken for that of its arrow */
const FARTHEST = 70;
const STEP = 8;
/** px: a shorter move has no arrow */
const LEAST_ARROW = 8;

interface Move {
  readonly piece: string;
  /** mm */
  readonly by: number;
  /** px, from the side that goes ahead: past what is written on the thing and past its chairs */
  readonly arrow: readonly [Point, Point];
  /** px, everything of it as it would stand */
  readonly box: WordBox;
}

/**
 * Moves that are proposed: where things would stand, dashed, an arrow from the side of each that goes ahead, and its
 * length near it, where it covers nothing if there is such a place.
 */
export function drawProposal(pen: Pen, model: PlanModel, edits: readonly Edit[]): void {
  const { pieces } = model.session.arrangement();
  const moves: Move[] = [];
  for (const edit of edits) {
    if (edit.do !== 'move-piece') continue;
    const before = pieces.find(({ id }) => id === edit.piece);
    if (!before) continue;
    const after = { ...before, x: edit.x, y: edit.y, rotation: edit.rotation ?? before.rotation };
    path(pen, ringOf(pen, pieceBody(after)));
    stroke(pen, { colour: colours.pencil, width: 1.6, dash: dashes.proposed });
    // Chairs go with their table; one arrow and one length say it.
    const by = distance(before, after);
    if (before.table === null && by >= 0.5) moves.push(moveOf(pen, before, after, by));
  }
  for (const { arrow } of moves) {
    if (distance(...arrow) < LEAST_ARROW) continue;
    line(pen, ...arrow, { colour: colours.pencil, width: 1.1, dash: dashes.proposed });
    drawArrowHead(pen, ...arrow, colours.pencil);
  }
  drawLengths(pen, model, moves);
}

function moveOf(pen: Pen, before: Piece, after: Piece, by: number): Move {
  const along = unit(sub(after, before));
  const far = (piece: Piece): Point => {
    const reach = Math.max(...cornersOfAll(piece).map((p) => dot(sub(p, piece), along)));
    return at(pen, add(piece, scale(along, reach)));
  };
  return { piece: before.id, by, arrow: [far(before), far(after)], box: boxAround(cornersOfAll(after).map((p) => at(pen, p))) };
}

const cornersOfAll = (piece: Piece): Point[] => [piece, ...(piece.kind === 'table' ? chairsOf(piece) : [])].flatMap(cornersOf);

function drawLengths(pen: Pen, model: PlanModel, moves: readonly Move[]): void {
  const isOnFloor = onFloor(pen, model);
  const things = [...takenOnFloor(pen, model), ...moves.flatMap(({ box, arrow }) => [box, boxAround(arrow)])];
  // Where there is no such place, rather over a mat that would fit, and then over a mark.
  const marks = [true, false].map((withMats) => takenByMarks(pen, model.session.report(), withMats));
  const numbers = pieceNumbers(model.session.classroom());
  for (const move of moves) {
    const length = sayLength(Math.round(move.by), pen.units);
    // Of several that move near each other, whose it is.
    const number = moves.length > 1 ? numbers.get(move.piece) : undefined;
    const text = number === undefined ? length : `${number}: ${length}`;
    const words = { width: widthOf(pen, text, SIZE, WEIGHT) + 2 * GROUND, size: SIZE + 2 };
    const places = placesOf(move, words);
    const clearOf = (more: readonly WordBox[]) => firstClear(places, words, [...things, ...more], isOnFloor);
    const place = marks.reduce<WordPlace | null>((found, more) => found ?? clearOf(more), null) ?? clearOf([]) ?? places[0];
    if (!place) continue;
    const { where, align } = place;
    write(pen, text, where, { size: SIZE, weight: WEIGHT, align, colour: colours.pencilText, ground: colours.leaf });
    things.push(boxOfWords(place, words.width, words.size));
  }
}

/** Past the arrow's head, beside it, and then farther and farther round both. */
function placesOf({ arrow: [tail, head], box }: Move, { width, size }: { readonly width: number; readonly size: number }): WordPlace[] {
  const ahead = distance(tail, head) < 1e-6 ? { x: 0, y: -1 } : unit(sub(head, tail));
  const place = (from: Point, way: Point, off: number): WordPlace => {
    // So far that the words, centred there, end before where they are measured from.
    const half = (Math.abs(way.x) * width + Math.abs(way.y) * size) / 2 + AIR + off;
    return { where: add(from, scale(way, half)), align: 'center' };
  };
  const round = [0, 1, 2, 3, 4, 5, 6, 7].map((i) => ({ x: Math.cos((i * Math.PI) / 4), y: Math.sin((i * Math.PI) / 4) }));
  const sides = [...round].sort((p, q) => dot(q, ahead) - dot(p, ahead));
  const places = [place(head, ahead, 0)];
  for (let off = 0; off <= FARTHEST; off += STEP) for (const way of sides) places.push(place(head, way, off));
  // Beside the thing as it would stand, where its arrow has no room.
  const middle = { x: (box.x0 + box.x1) / 2, y: (box.y0 + box.y1) / 2 };
  const edges = [
    { from: { x: middle.x, y: box.y0 }, way: { x: 0, y: -1 } },
    { from: { x: middle.x, y: box.y1 }, way: { x: 0, y: 1 } },
    { from: { x: box.x0, y: middle.y }, way: { x: -1, y: 0 } },
    { from: { x: box.x1, y: middle.y }, way: { x: 1, y: 0 } },
  ];
  for (let off = 0; off <= FARTHEST; off += STEP) for (const { from, way } of edges) places.push(place(from, way, off));
  return places;
}
