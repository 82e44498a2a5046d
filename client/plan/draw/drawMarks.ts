import { colours, dashes } from '#client/styles/tokens.ts';
import type { Finding, Severity } from '#model/findings/finding.ts';
import { add, distance, lerp, type Point, scale, sub, unit } from '#model/geometry/vec.ts';
import { cornersOf } from '../box.ts';
import { type NumberedRemark, REMARK_BOX } from '../remarks.ts';
import type { MatPlace, NarrowPlace } from '../reportParts.ts';
import { at, figure, fill, line, type Pen, path, planPath, stroke, widthOf, write } from './pen.ts';
import type { WordBox } from './wordPlace.ts';

export function drawMat(pen: Pen, mat: MatPlace): void {
  planPath(pen, cornersOf(mat));
  fill(pen, colours.mat);
  stroke(pen, { colour: colours.pencil, width: 1, dash: dashes.mat });
  const long = Math.max(mat.width, mat.depth) * pen.view.k;
  const text = long > 46 ? `mat ${mat.number}` : String(mat.number);
  if (long > 16) write(pen, text, at(pen, mat), { size: 10.5, colour: colours.pencilText });
}

/** The tinted strip of a place too narrow, and what is kept for children where it ends at them; it lies under the pieces. */
export function drawNarrowStrip(pen: Pen, place: NarrowPlace): void {
  const across = unit(sub(place.b, place.a));
  const along = scale({ x: -across.y, y: across.x }, place.length / 2);
  planPath(pen, [add(place.a, along), add(place.b, along), sub(place.b, along), sub(place.a, along)]);
  pen.ctx.globalAlpha = 0.12;
  fill(pen, colours.must);
  pen.ctx.globalAlpha = 1;
  for (const strip of place.kept) {
    planPath(pen, strip);
    stroke(pen, { colour: colours.shouldText, width: 1, dash: dashes.mat });
  }
}

/** px that the words of an arrow are moved, nearest first, to keep off what stands written there */
const ASIDE: readonly Point[] = [0, 4, 14, 28, 42]
  .flatMap((x) => [0, 4, 14, 28, 42].flatMap((y) => [x, -x].flatMap((dx) => [y, -y].map((dy) => ({ x: dx, y: dy })))))
  .sort((p, q) => Math.hypot(p.x, p.y) - Math.hypot(q.x, q.y));

/** The arrow between the two things: measured above it, needed below. `labels`: the words on things, which they keep off. */
export function drawNarrowArrow(pen: Pen, place: NarrowPlace, severity: Severity, labels: readonly WordBox[] = []): void {
  const colour = severity === 'must' ? colours.must : colours.shouldText;
  const a = at(pen, place.a);
  const b = at(pen, place.b);
  const isLevel = Math.abs(b.x - a.x) >= Math.abs(b.y - a.y);
  const middle = lerp(a, b, 0.5);
  const measured = figure(pen, place.measured, place.needed);
  const needed = figure(pen, place.needed, place.needed);
  const wide = Math.max(widthOf(pen, measured, 12, 700), widthOf(pen, isLevel ? needed : `needs ${needed}`, 10.5, 700));
  const block = isLevel
    ? { x0: middle.x - wide / 2, x1: middle.x + wide / 2, y0: middle.y - 18, y1: middle.y + 29 }
    : { x0: middle.x + 8, x1: middle.x + 8 + wide, y0: middle.y - 15, y1: middle.y + 13 };
  // Beside the arrow, on either side of it: over it they would hide what they are about.
  const arrow: WordBox = { x0: Math.min(a.x, b.x), x1: Math.max(a.x, b.x), y0: Math.min(a.y, b.y), y1: Math.max(a.y, b.y) };
  const rows = isLevel
    ? [
        { ...block, y1: middle.y - 4 },
        { ...block, y0: middle.y + 4 },
      ]
    : [block];
  const places = isLevel ? ASIDE : [...ASIDE, ...ASIDE.map((by) => ({ x: by.x - wide - 16, y: by.y }))];
  const isClear = (by: Point): boolean => isClearBy(block, by, labels);
  const isBeside = (by: Point): boolean => rows.every((row) => isClearBy(row, by, [arrow]));
  const { x, y } = places.find((by) => isClear(by) && isBeside(by)) ?? places.find(isClear) ?? { x: 0, y: 0 };
  const put = (text: string, dx: number, dy: number, size: number, weight = 400): void => {
    const align = isLevel ? 'center' : 'left';
    write(pen, text, { x: middle.x + dx + x, y: middle.y + dy + y }, { size, weight, colour, align, ground: colours.paper });
  };
  if (isLevel) {
    put(measured, 0, -11, 12, 700);
    put('needs', 0, 11, 10.5);
    put(needed, 0, 23, 10.5, 700);
  } else {
    put(measured, 8, -8, 12, 700);
    put(`needs ${needed}`, 8, 7, 10.5);
  }
  // Last, so that the ground of the words hides no part of it.
  line(pen, a, b, { colour, width: 1.4 });
  drawArrowHead(pen, b, a, colour);
  drawArrowHead(pen, a, b, colour);
}

const isClearBy = (block: WordBox, by: Point, labels: readonly WordBox[]): boolean =>
  labels.every(
    (label) =>
      block.x0 + by.x > label.x1 + 3 || block.x1 + by.x < label.x0 - 3 || block.y0 + by.y > label.y1 + 2 || block.y1 + by.y < label.y0 - 2,
  );

/** How wide a way is at its narrowest place: the arrow between the two things, in ink. */
export function drawWayArrow(pen: Pen, [from, to]: readonly Point[], width: number): void {
  if (!from || !to || distance(from, to) < 1) return;
  const a = at(pen, from);
  const b = at(pen, to);
  line(pen, a, b, { colour: colours.ink, width: 1.4 });
  drawArrowHead(pen, b, a, colours.ink);
  drawArrowHead(pen, a, b, colours.ink);
  const middle = lerp(a, b, 0.5);
  const isLevel = Math.abs(b.x - a.x) >= Math.abs(b.y - a.y);
  const beside = isLevel ? { x: middle.x, y: middle.y - 11 } : { x: middle.x + 8, y: middle.y };
  const align = isLevel ? 'center' : 'left';
  write(pen, `way ${figure(pen, width)}`, beside, { size: 12, weight: 700, align, ground: colours.paper });
}

export function drawArrowHead(pen: Pen, from: Point, tip: Point, colour: string, size = 6): void {
  if (distance(from, tip) < size) return;
  const back = scale(unit(sub(from, tip)), size);
  const side = scale({ x: -back.y, y: back.x }, 0.5);
  line(pen, add(tip, add(back, side)), tip, { colour, width: 1.4 });
  line(pen, add(tip, sub(back, side)), tip, { colour, width: 1.4 });
}

/** Severity is a shape: filled diamond, half-filled triangle, ring; a dashed ring where it cannot be told. */
export function drawSeverity(pen: Pen, p: Point, finding: Pick<Finding, 'severity' | 'outcome'>, size = 1): void {
  const { ctx } = pen;
  const [far, low] = [6.5 * size, 5 * size];
  if (finding.outcome === 'cannot-tell' || finding.severity === 'note') {
    ctx.beginPath();
    ctx.arc(p.x, p.y, 4.6 * size, 0, 2 * Math.PI);
    fill(pen, colours.paper);
    stroke(pen, { colour: colours.note, width: 1.6, dash: finding.outcome === 'cannot-tell' ? [2, 2] : [] });
    return;
  }
  if (finding.severity === 'must') {
    path(pen, [offset(p, 0, -far), offset(p, far, 0), offset(p, 0, far), offset(p, -far, 0)]);
    fill(pen, colours.must);
    stroke(pen, { colour: colours.paper, width: 1 });
    return;
  }
  const top = offset(p, 0, -far);
  const right = offset(p, far, low);
  const left = offset(p, -far, low);
  path(pen, [top, right, left]);
  fill(pen, colours.paper);
  path(pen, [top, offset(p, 0, low), left]);
  fill(pen, colours.should);
  path(pen, [top, right, left]);
  stroke(pen, { colour: colours.should, width: 1.4 });
}

const offset = (p: Point, x: number, y: number): Point => ({ x: p.x + x, y: p.y + y });

/** A remark: a small ruled slip with its number. */
export function drawRemark(pen: Pen, where: Point, { note, number }: NumberedRemark): void {
  const { minX, minY, maxX, maxY } = REMARK_BOX;
  line(pen, where, offset(where, 9, -9), { colour: colours.blue, width: 0.9 });
  path(pen, [offset(where, minX, minY), offset(where, maxX, minY), offset(where, maxX, maxY), offset(where, minX, maxY)]);
  fill(pen, colours.paper);
  stroke(pen, { colour: note.done ? colours.pencil : colours.blue, width: 1 });
  const colour = note.done ? colours.pencilText : colours.blue;
  write(pen, String(number), offset(where, (minX + maxX) / 2, (minY + maxY) / 2), { size: 10, weight: 600, colour, isItalic: true });
}
