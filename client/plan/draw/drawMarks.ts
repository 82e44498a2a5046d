import { colours, dashes } from '#client/styles/tokens.ts';
import type { Finding, Severity } from '#model/findings/finding.ts';
import { add, distance, lerp, type Point, scale, sub, unit } from '#model/geometry/vec.ts';
import { cornersOf } from '../box.ts';
import { type NumberedRemark, REMARK_BOX } from '../remarks.ts';
import type { MatPlace, NarrowPlace } from '../reportParts.ts';
import { at, figure, fill, line, type Pen, path, planPath, stroke, write } from './pen.ts';

export function drawMat(pen: Pen, mat: MatPlace): void {
  planPath(pen, cornersOf(mat));
  fill(pen, colours.mat);
  stroke(pen, { colour: colours.pencil, width: 1, dash: dashes.mat });
  const long = Math.max(mat.width, mat.depth) * pen.view.k;
  const text = long > 46 ? `mat ${mat.number}` : String(mat.number);
  if (long > 16) write(pen, text, at(pen, mat), { size: 10.5, colour: colours.pencilText });
}

/** The tinted strip of a place too narrow; it lies under the pieces. */
export function drawNarrowStrip(pen: Pen, place: NarrowPlace): void {
  const across = unit(sub(place.b, place.a));
  const along = scale({ x: -across.y, y: across.x }, place.length / 2);
  planPath(pen, [add(place.a, along), add(place.b, along), sub(place.b, along), sub(place.a, along)]);
  pen.ctx.globalAlpha = 0.12;
  fill(pen, colours.must);
  pen.ctx.globalAlpha = 1;
}

/** The arrow between the two things: measured above it, needed below. */
export function drawNarrowArrow(pen: Pen, place: NarrowPlace, severity: Severity): void {
  const colour = severity === 'must' ? colours.must : colours.shouldText;
  const a = at(pen, place.a);
  const b = at(pen, place.b);
  const isLevel = Math.abs(b.x - a.x) >= Math.abs(b.y - a.y);
  line(pen, a, b, { colour, width: 1.4 });
  drawArrowHead(pen, b, a, colour);
  drawArrowHead(pen, a, b, colour);
  const middle = lerp(a, b, 0.5);
  const measured = figure(pen, place.measured, place.needed);
  const needed = figure(pen, place.needed, place.needed);
  if (isLevel) {
    write(pen, measured, { x: middle.x, y: middle.y - 11 }, { size: 12, weight: 700, colour, ground: colours.paper });
    write(pen, 'needs', { x: middle.x, y: middle.y + 11 }, { size: 10.5, colour, ground: colours.paper });
    write(pen, needed, { x: middle.x, y: middle.y + 23 }, { size: 10.5, weight: 700, colour, ground: colours.paper });
    return;
  }
  const right = middle.x + 8;
  write(pen, measured, { x: right, y: middle.y - 8 }, { size: 12, weight: 700, colour, align: 'left', ground: colours.paper });
  write(pen, `needs ${needed}`, { x: right, y: middle.y + 7 }, { size: 10.5, colour, align: 'left', ground: colours.paper });
}

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
