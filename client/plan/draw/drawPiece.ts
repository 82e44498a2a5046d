import { colours, lines } from '#client/styles/tokens.ts';
import { areaCode, areaLetters } from '#model/catalogue/areas.ts';
import { add, distance, lerp, type Point, scale, sub, unit } from '#model/geometry/vec.ts';
import type { SceneBody, SceneEdge } from '#model/scene/types.ts';
import type { Piece, Side } from '#model/schema/types.ts';
import type { ShelfArea } from '../areas.ts';
import { chairsOf } from '../chairs.ts';
import { drawPencilOutline, drawPlain, label, ringOf } from './drawShape.ts';
import { drawAdultSeat, drawChair, drawEasel, drawMatStand, drawRug } from './drawSmallPieces.ts';
import { hatch } from './hatch.ts';
import { at, fill, line, type Pen, path, stroke } from './pen.ts';

export interface PieceLook {
  readonly number: string | null;
  readonly area: ShelfArea | null;
  /** Drawn faintly: where something was, or would be. */
  readonly isPencil?: boolean;
}

/** One thing on the plan, whatever its kind. */
export function drawPiece(pen: Pen, body: SceneBody, look: PieceLook): void {
  const { piece } = body;
  if (!piece) return;
  if (look.isPencil) {
    drawPencilOutline(pen, body);
    return;
  }
  switch (piece.kind) {
    case 'shelf':
      drawShelf(pen, body, piece, look);
      return;
    case 'table':
      for (const chair of chairsOf(piece)) drawChair(pen, chair);
      drawPlain(pen, body, colours.leaf);
      label(pen, body, look.number ?? piece.name, 400);
      return;
    case 'seat':
      drawChair(pen, piece);
      return;
    case 'mat-stand':
      drawMatStand(pen, body);
      return;
    case 'easel':
      drawEasel(pen, body);
      return;
    case 'rug':
      drawRug(pen, body);
      return;
    case 'adult-seat':
      drawAdultSeat(pen, body);
      return;
    case 'other':
      drawPlain(pen, body, colours.leaf);
      label(pen, body, piece.name || 'other', 400);
  }
}

function drawShelf(pen: Pen, body: SceneBody, piece: Piece, look: PieceLook): void {
  const ring = ringOf(pen, body);
  path(pen, ring);
  fill(pen, colours.leaf);
  const code = look.area && areaCode(look.area.area, look.area.strand);
  if (code) hatch(pen, ring, code, piece.for === 'adults' ? colours.rule : colours.pencil);
  path(pen, ring);
  stroke(pen, { width: lines.outline });
  if (piece.divider) drawDivider(pen, body);
  for (const side of piece.sides) drawOpenSide(pen, body, piece, side);
  label(pen, body, [look.number, look.area && areaLetters(look.area.area, look.area.strand)].filter(Boolean).join(' '), 650);
  if (piece.locked) drawLock(pen, body);
}

/** Back to back boards: the panel between them. */
function drawDivider(pen: Pen, body: SceneBody): void {
  const { left, right } = body.edges;
  line(pen, at(pen, lerp(left.a, left.b, 0.5)), at(pen, lerp(right.a, right.b, 0.5)), { width: lines.outline });
}

/** The side one takes from: thick, with one tick a board where reading starts. */
function drawOpenSide(pen: Pen, body: SceneBody, piece: Piece, side: Side): void {
  const edge = body.edges[side];
  const a = at(pen, edge.a);
  const b = at(pen, edge.b);
  const thin = Math.min(body.width, body.depth) * pen.view.k;
  const thick = Math.min(lines.openSide, Math.max(1.6, thin * 0.3));
  const inset = scale(edge.outward, -thick / 2 + 0.5);
  line(pen, add(a, inset), add(b, inset), { width: thick });
  if (piece.closed) line(pen, add(a, scale(edge.outward, 3)), add(b, scale(edge.outward, 3)), { width: 0.9, dash: [3, 2] });
  // Seen from far off ticks would be larger than the shelf.
  if (thin >= 8) drawTicks(pen, edge, a, b, piece.levels.length);
}

function drawTicks(pen: Pen, edge: SceneEdge, a: Point, b: Point, count: number): void {
  const [start, end] = pen.isRightToLeft ? [b, a] : [a, b];
  const along = unit(sub(end, start));
  const room = distance(a, b);
  const shown = Math.min(count, Math.floor((room - 4) / 3.2));
  for (let i = 0; i < shown; i++) {
    const foot = add(start, scale(along, 3 + i * 3.2));
    line(pen, foot, add(foot, scale(edge.outward, 5.5)), { width: 1.1 });
  }
}

/** A small cross at the back left corner: fixed in its place. */
function drawLock(pen: Pen, body: SceneBody): void {
  const corner = at(pen, lerp(body.edges.back.b, body.center, 0.12));
  line(pen, { x: corner.x - 2.5, y: corner.y - 2.5 }, { x: corner.x + 2.5, y: corner.y + 2.5 }, { width: 1.1 });
  line(pen, { x: corner.x + 2.5, y: corner.y - 2.5 }, { x: corner.x - 2.5, y: corner.y + 2.5 }, { width: 1.1 });
}
