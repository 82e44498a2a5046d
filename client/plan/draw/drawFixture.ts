import { colours, lines } from '#client/styles/tokens.ts';
import { lerp, type Point } from '#model/geometry/vec.ts';
import type { SceneBody } from '#model/scene/types.ts';
import type { Fixture } from '#model/schema/types.ts';
import { drawPlain, label, ringOf } from './drawShape.ts';
import { at, fill, line, type Pen, path, stroke } from './pen.ts';

/** What belongs to the room: each kind has its own lines, so that it is known without its label. */
export function drawFixture(pen: Pen, body: SceneBody): void {
  const { fixture } = body;
  if (!fixture) return;
  switch (fixture.kind) {
    case 'column':
    case 'partition':
      path(pen, ringOf(pen, body));
      fill(pen, colours.wall);
      break;
    case 'sink':
      drawPlain(pen, body, colours.leaf);
      drawBasins(pen, body);
      break;
    case 'radiator':
      drawPlain(pen, body, colours.leaf);
      drawBars(pen, body, Math.max(2, Math.round(body.width / 120)));
      break;
    case 'hearth':
    case 'built-in':
      drawPlain(pen, body, colours.leaf);
      drawDiagonals(pen, body);
      label(pen, body, nameOf(fixture), 400);
      break;
    case 'step':
      drawPlain(pen, body, colours.leaf);
      drawBars(pen, body, 3);
      label(pen, body, nameOf(fixture), 400);
      break;
    case 'other':
      drawPlain(pen, body, colours.leaf);
      label(pen, body, nameOf(fixture), 400);
  }
  if (fixture.front) drawUseSide(pen, body);
}

const nameOf = (fixture: Fixture): string => fixture.name || (fixture.kind === 'built-in' ? 'cupboard' : fixture.kind);

/** A point of the fixture by share of its width and depth, from back left, on the screen. */
function inner(pen: Pen, body: SceneBody, across: number, down: number): Point {
  const { back, front } = body.edges;
  return at(pen, lerp(lerp(back.b, back.a, across), lerp(front.a, front.b, across), down));
}

function drawBasins(pen: Pen, body: SceneBody): void {
  const count = Math.max(1, Math.round(body.width / 500));
  for (let i = 0; i < count; i++) {
    const x0 = (i + 0.16) / count;
    const x1 = (i + 0.84) / count;
    path(pen, [inner(pen, body, x0, 0.25), inner(pen, body, x1, 0.25), inner(pen, body, x1, 0.85), inner(pen, body, x0, 0.85)]);
    pen.ctx.lineJoin = 'round';
    stroke(pen, { width: lines.outline });
    const tap = inner(pen, body, (x0 + x1) / 2, 0.55);
    pen.ctx.beginPath();
    pen.ctx.arc(tap.x, tap.y, 1.6, 0, 2 * Math.PI);
    fill(pen, colours.ink);
  }
  pen.ctx.lineJoin = 'miter';
}

function drawBars(pen: Pen, body: SceneBody, count: number): void {
  for (let i = 1; i < count; i++) line(pen, inner(pen, body, i / count, 0), inner(pen, body, i / count, 1), { width: 0.8 });
}

function drawDiagonals(pen: Pen, body: SceneBody): void {
  line(pen, inner(pen, body, 0, 0), inner(pen, body, 1, 1), { width: 0.7, colour: colours.pencil });
  line(pen, inner(pen, body, 1, 0), inner(pen, body, 0, 1), { width: 0.7, colour: colours.pencil });
}

/** The side it is used from. */
function drawUseSide(pen: Pen, body: SceneBody): void {
  const { front } = body.edges;
  line(pen, at(pen, front.a), at(pen, front.b), { width: 2 });
}
