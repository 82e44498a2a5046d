import { colours, lines } from '#client/styles/tokens.ts';
import { lerp, type Point } from '#model/geometry/vec.ts';
import type { SceneBody } from '#model/scene/types.ts';
import { cornersOf, type TurnedBox } from '../box.ts';
import { matStandWords } from '../matStandWords.ts';
import { label, ringOf } from './drawShape.ts';
import { at, fill, line, type Pen, path, stroke, widthOf, write } from './pen.ts';
import { firstClear, type WordBox, type WordPlace } from './wordPlace.ts';

/** A chair: a rounded square, its back as a line. */
export function drawChair(pen: Pen, chair: TurnedBox): void {
  const [backLeft, backRight, frontRight, frontLeft] = cornersOf(chair).map((p) => at(pen, p)) as [Point, Point, Point, Point];
  const { ctx } = pen;
  const radius = Math.min(3, (chair.width * pen.view.k) / 4);
  ctx.beginPath();
  const middle = lerp(backLeft, backRight, 0.5);
  ctx.moveTo(middle.x, middle.y);
  for (const [corner, next] of [
    [backRight, frontRight],
    [frontRight, frontLeft],
    [frontLeft, backLeft],
    [backLeft, middle],
  ] as const)
    ctx.arcTo(corner.x, corner.y, next.x, next.y, radius);
  ctx.closePath();
  fill(pen, colours.leaf);
  stroke(pen, { width: 0.9 });
  const inset = 0.18;
  line(pen, lerp(backLeft, frontLeft, inset), lerp(backRight, frontRight, inset), { width: 0.8 });
}

/** Rolled mats seen from above. */
export function drawMatStand(pen: Pen, body: SceneBody): void {
  path(pen, ringOf(pen, body));
  fill(pen, colours.mat);
  stroke(pen, { width: lines.outline });
  const { left, right } = body.edges;
  for (const share of [0.25, 0.5, 0.75]) {
    line(pen, at(pen, lerp(left.a, left.b, share)), at(pen, lerp(right.b, right.a, share)), { width: 0.8, colour: colours.pencil });
  }
  const [whole, short] = matStandWords(body.piece?.name ?? '');
  label(pen, body, whole, 400, short);
}

/** Two boards that lean together: the ridge between them. */
export function drawEasel(pen: Pen, body: SceneBody): void {
  path(pen, ringOf(pen, body));
  fill(pen, colours.leaf);
  stroke(pen, { width: lines.outline });
  const { left, right, front } = body.edges;
  line(pen, at(pen, lerp(left.a, left.b, 0.5)), at(pen, lerp(right.b, right.a, 0.5)), { width: 2 });
  line(pen, at(pen, front.a), at(pen, front.b), { width: 2 });
  label(pen, body, body.piece?.name || 'easel', 400);
}

/** Lies on the floor and is walked on: a double line and no weight. */
export function drawRug(pen: Pen, body: SceneBody): void {
  const ring = ringOf(pen, body);
  path(pen, ring);
  fill(pen, colours.mat);
  stroke(pen, { width: 0.9, colour: colours.pencil });
  const centre = at(pen, body.center);
  const shrink = 1 - Math.min(0.4, 8 / Math.max(1, Math.min(body.width, body.depth) * pen.view.k));
  path(
    pen,
    ring.map((p) => lerp(centre, p, shrink)),
  );
  stroke(pen, { width: 0.7, colour: colours.pencil });
  label(pen, body, body.piece?.name || 'rug', 400);
}

export function drawAdultSeat(pen: Pen, body: SceneBody): void {
  const centre = at(pen, body.center);
  const { ctx } = pen;
  const round = Math.max(6, (Math.min(body.width, body.depth) / 2) * pen.view.k);
  for (const radius of [round, Math.min(3, round / 2)]) {
    ctx.beginPath();
    ctx.arc(centre.x, centre.y, radius, 0, 2 * Math.PI);
    fill(pen, colours.leaf);
    stroke(pen, { width: lines.outline });
  }
}

/** Where the chair's words have room beside it, on floor that nothing stands on. `taken`: px. Null: nowhere. */
export function adultSeatWords(
  pen: Pen,
  body: SceneBody,
  taken: readonly WordBox[],
  isAllowed: (box: WordBox) => boolean,
): PlacedWords | null {
  const text = body.piece?.name || 'adult’s chair';
  const c = at(pen, body.center);
  const far = Math.max(6, (Math.min(body.width, body.depth) / 2) * pen.view.k) + 4;
  const places: readonly WordPlace[] = [
    { where: { x: c.x + far, y: c.y }, align: 'left' },
    { where: { x: c.x - far, y: c.y }, align: 'right' },
    { where: { x: c.x, y: c.y + far + WORDS / 2 }, align: 'center' },
    { where: { x: c.x, y: c.y - far - WORDS / 2 }, align: 'center' },
  ];
  const place = firstClear(places, { width: widthOf(pen, text, WORDS), size: WORDS }, taken, isAllowed);
  return place && { text, place };
}

export interface PlacedWords {
  readonly text: string;
  readonly place: WordPlace;
}

export function drawAdultSeatWords(pen: Pen, { text, place }: PlacedWords): void {
  write(pen, text, place.where, { size: WORDS, colour: colours.pencilText, align: place.align, ground: colours.leaf });
}

const WORDS = 10.5;
