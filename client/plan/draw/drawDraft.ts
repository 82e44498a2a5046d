import { colours } from '#client/styles/tokens.ts';
import { distance, lerp, type Point } from '#model/geometry/vec.ts';
import { fixtureBody, pieceBody } from '#model/scene/bodies.ts';
import { ghostOf } from '../ghost.ts';
import type { PlanModel } from '../planModel.ts';
import { toPlan } from '../viewport.ts';
import { nextCorner } from '../wallDraft.ts';
import { drawDimension } from './drawDimensions.ts';
import { drawWayArrow } from './drawMarks.ts';
import { drawPencilOutline } from './drawShape.ts';
import { at, fill, line, type Pen, planPath, stroke } from './pen.ts';

/** What is being drawn: walls so far, a thing about to be set down, the tape. */
export function drawDraft(pen: Pen, model: PlanModel): void {
  const { tool, corners, tape, tapeEdge, tapeWay, picturePoints, remarkAt, cross } = model.store.state();
  drawWallsSoFar(pen, model, corners, tool?.kind === 'wall');
  const edge = tapeEdge && tapeEdge.mm >= 1 ? tapeEdge : null;
  drawTape(pen, model, tape, tool?.kind === 'tape', edge);
  if (edge) drawDimension(pen, at(pen, edge.from), at(pen, edge.to), edge.mm, { ...blue, colour: colours.ink });
  if (tapeWay?.width) drawWayArrow(pen, tapeWay.between, tapeWay.width);
  drawPicturePoints(pen, picturePoints);
  if (remarkAt) drawKnob(pen, at(pen, remarkAt.at));
  if (cross) drawCross(pen, at(pen, cross));
  const ghost = ghostOf(model);
  if (!ghost) return;
  if (ghost.kind === 'piece') drawPencilOutline(pen, pieceBody(ghost.piece));
  if (ghost.kind === 'fixture') drawPencilOutline(pen, fixtureBody(ghost.fixture));
  if (ghost.kind === 'opening') {
    const { a, b } = ghost;
    line(pen, at(pen, a), at(pen, b), { colour: colours.blue, width: 4 });
    drawDimension(pen, at(pen, ghost.wall.a), at(pen, a), distance(ghost.wall.a, a), blue);
    drawDimension(pen, at(pen, b), at(pen, ghost.wall.b), distance(b, ghost.wall.b), blue);
  }
  if (ghost.kind === 'piece' || ghost.kind === 'fixture')
    for (const { from, to, mm } of ghost.distances) drawDimension(pen, at(pen, from), at(pen, to), mm, blue);
}

const blue = { colour: colours.blue, weight: 650, size: 11.5, ground: colours.leaf } as const;

function drawWallsSoFar(pen: Pen, model: PlanModel, corners: readonly Point[], isDrawing: boolean): void {
  const last = corners.at(-1);
  if (!last) return;
  planPath(pen, corners, false);
  stroke(pen, { colour: colours.wall, width: 4 });
  for (const corner of corners) drawKnob(pen, at(pen, corner));
  corners.slice(1).forEach((corner, i) => {
    const from = corners[i];
    if (from) drawDimension(pen, at(pen, from), at(pen, corner), distance(from, corner), { ground: colours.paper });
  });
  if (!isDrawing || !model.pointer) return;
  const next = nextCorner(corners, toPlan(model.view, model.pointer), 14 / model.view.k).at;
  line(pen, at(pen, last), at(pen, next), { colour: colours.wall, width: 3, dash: [6, 4] });
  drawDimension(pen, at(pen, last), at(pen, next), distance(last, next), blue);
}

/** px: two figures nearer than this lie on one another */
const NEAR = 48;

/** `edge`: the distance from edge to edge, which is drawn too. */
function drawTape(
  pen: Pen,
  model: PlanModel,
  tape: readonly Point[],
  isMeasuring: boolean,
  edge: { readonly from: Point; readonly to: Point } | null,
): void {
  const [from, laid] = tape;
  if (!from) return;
  const to = laid ?? (isMeasuring && model.pointer ? toPlan(model.view, model.pointer) : null);
  drawKnob(pen, at(pen, from));
  if (!to) return;
  drawKnob(pen, at(pen, to));
  // Of two figures in one place that from edge to edge is the one that people walk by; both stand in the words.
  const isBare = edge !== null && distance(at(pen, lerp(from, to, 0.5)), at(pen, lerp(edge.from, edge.to, 0.5))) < NEAR;
  drawDimension(pen, at(pen, from), at(pen, to), distance(from, to), { ...blue, size: 12.5, isBare });
}

/** The two ends by which the picture gets its scale. */
function drawPicturePoints(pen: Pen, [from, to]: readonly Point[]): void {
  if (!from) return;
  if (to) line(pen, at(pen, from), at(pen, to), { colour: colours.blue, width: 2.2 });
  for (const end of [from, to]) if (end) drawKnob(pen, at(pen, end));
}

/** Where the keys point. */
function drawCross(pen: Pen, { x, y }: Point): void {
  for (const [ink, width] of [
    [colours.paper, 5],
    [colours.blue, 2],
  ] as const) {
    line(pen, { x: x - 14, y }, { x: x + 14, y }, { colour: ink, width });
    line(pen, { x, y: y - 14 }, { x, y: y + 14 }, { colour: ink, width });
  }
}

function drawKnob(pen: Pen, p: Point): void {
  pen.ctx.beginPath();
  pen.ctx.arc(p.x, p.y, 4, 0, 2 * Math.PI);
  fill(pen, colours.paper);
  stroke(pen, { colour: colours.blue, width: 1.6 });
}
