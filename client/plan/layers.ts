import { pointedAt } from '#client/checks/pointOut.ts';
import { colours } from '#client/styles/tokens.ts';
import type { Finding } from '#model/findings/finding.ts';
import { seatStrips } from '#model/measures/seats.ts';
import { pieceBody } from '#model/scene/bodies.ts';
import { isSameList } from '#model/scene/kept.ts';
import type { SceneBody } from '#model/scene/types.ts';
import { pictureOf } from '#model/schema/picture.ts';
import { pieceNumbers } from '#model/schema/pieceNumbers.ts';
import type { Piece } from '#model/schema/types.ts';
import { laidPart, laidUnder } from '../laidOver/laidOf.ts';
import { conflictsOnPlan, drawConflicts } from '../states/drawConflicts.ts';
import { isNotDrawn } from '../states/notDrawn.ts';
import { areasOfShelves } from './areas.ts';
import { bodyOfFixture, bodyOfPiece } from './bodies.ts';
import { drawDimension, drawOuterStrings } from './draw/drawDimensions.ts';
import { drawDraft } from './draw/drawDraft.ts';
import { drawFindings, labelsOf } from './draw/drawFindings.ts';
import { drawFixture } from './draw/drawFixture.ts';
import { drawHandles } from './draw/drawHandles.ts';
import { drawChosen, drawHold, drawNumberBehind, drawPointed, drawPointedPlace } from './draw/drawHolds.ts';
import { drawMat, drawNarrowArrow, drawNarrowStrip, drawRemark } from './draw/drawMarks.ts';
import { drawNeatline } from './draw/drawNeatline.ts';
import { drawOpening, drawOpeningNames } from './draw/drawOpenings.ts';
import { drawPencil, proposalPart } from './draw/drawPencil.ts';
import { drawPicture } from './draw/drawPicture.ts';
import { drawPiece, type PieceLook } from './draw/drawPiece.ts';
import { drawGrid, drawNorth, drawRoom, drawScaleBar, drawZones, wallPx } from './draw/drawRoom.ts';
import { drawPencilOutline, ringOf } from './draw/drawShape.ts';
import { adultSeatWords, drawAdultSeatWords, type PlacedWords } from './draw/drawSmallPieces.ts';
import { drawUnseen, drawUnseenWords } from './draw/drawUnseen.ts';
import { boxOfLabel } from './draw/labelPlace.ts';
import { at, fill, line, type Pen, path, planPath, stroke } from './draw/pen.ts';
import { onFloor, takenByMarks, takenOnFloor } from './draw/takenOnFloor.ts';
import { handlesOf } from './handles.ts';
import { wordsBeside } from './handleWords.ts';
import type { Item } from './items.ts';
import { restPartHere } from './lateParts.ts';
import { matsLying } from './matsLying.ts';
import { bodyById, boundsOf, hasStrings, type LayerName, type PlanModel, rawRoomOf, roomOf } from './planModel.ts';
import { numberedRemarks, remarkPlace } from './remarks.ts';
import { isOfWidth, narrowPlaceOf } from './reportParts.ts';
import { sayUnseen, unseenToDraw } from './unseen.ts';

/** Draws one of the canvases from what the session says now. */
export function drawLayer(name: LayerName, ctx: CanvasRenderingContext2D, model: PlanModel): void {
  const { display } = model.session.classroom();
  const pen: Pen = { ctx, view: model.view, units: display.units, isRightToLeft: display.readingDirection === 'rtl' };
  drawers[name](pen, model);
}

const drawers: Readonly<Record<LayerName, (pen: Pen, model: PlanModel) => void>> = {
  sheet: drawSheet,
  marks: drawUnderMarks,
  things: drawThings,
  checks: drawSaid,
  over: drawOver,
};

function drawSheet(pen: Pen, model: PlanModel): void {
  const room = roomOf(model);
  const bounds = boundsOf(model);
  // Pencil until somebody draws the walls or types length and width.
  if (isNotDrawn(rawRoomOf(model))) {
    planPath(pen, room.outline);
    stroke(pen, { colour: colours.pencil, width: 1.4, dash: [5, 4] });
  } else drawRoom(pen, room);
  const picture = model.draftPicture ?? pictureOf(rawRoomOf(model).picture);
  if (picture) drawPicture(pen, picture, () => model.redraw('sheet'));
  drawZones(pen, rawRoomOf(model).zones);
  drawGrid(pen, room, { x: bounds.minX, y: bounds.minY }, { x: bounds.maxX, y: bounds.maxY });
  for (const opening of room.openings) drawOpening(pen, opening);
  drawOpeningNames(pen, room);
  if (hasStrings(model.size)) drawOuterStrings(pen, room);
  const corner = { x: model.size.width - 26, y: model.size.height - 24 };
  drawScaleBar(pen, corner);
  if (hasStrings(model.size)) drawNorth(pen, { x: corner.x - 1000 * model.view.k - 34, y: corner.y + 10 });
}

function drawUnderMarks(pen: Pen, model: PlanModel): void {
  if (isNotDrawn(rawRoomOf(model))) return;
  const { session } = model;
  const report = session.report();
  const shown = shownFinding(model);
  const unseen = unseenToDraw(report, {
    finding: shown,
    isMoving: model.moving !== null,
    floor: roomOf(model).area * 1e6,
  });
  // A rug lies under what is laid on it.
  for (const piece of restingPieces(model)) if (isRug(piece)) drawPiece(pen, bodyOfPiece(piece), NO_LOOK);
  // Quieter beside what is chosen.
  drawUnseen(pen, unseen, session.view().chosen !== null && !shown ? 0.5 : 1);
  for (const mat of matsLying(report, session.arrangement().pieces)) drawMat(pen, mat);
  if (unseen.length > 0) {
    const taken = [...takenOnFloor(pen, model), ...takenByMarks(pen, report)];
    drawUnseenWords(pen, unseen, [sayUnseen(session.arrangement()), 'not seen'], taken, onFloor(pen, model));
  }
  const place = shown && report && narrowPlaceOf(shown, report, obstaclesOf(model));
  if (place) drawNarrowStrip(pen, place);
}

const NO_LOOK: PieceLook = { number: null, area: null };

/** Drawn with the checks, below the mats; what is in hand or disputed is drawn above everything. */
const isRug = (piece: Piece): boolean => piece.kind === 'rug';

const hiddenIn = ({ session, moving }: PlanModel): ReadonlySet<string> =>
  new Set([...(moving?.ids ?? []), ...conflictsOnPlan(session).keys()]);

function restingPieces(model: PlanModel): readonly Piece[] {
  const hidden = hiddenIn(model);
  return model.session.arrangement().pieces.filter((piece) => !hidden.has(piece.id));
}

function drawThings(pen: Pen, model: PlanModel): void {
  const places = conflictsOnPlan(model.session);
  const hidden = hiddenIn(model);
  laidPart()?.drawLaidUnder(pen, laidIn(model));
  const look = looksOf(model);
  for (const fixture of rawRoomOf(model).fixtures) if (!hidden.has(fixture.id)) drawFixture(pen, bodyOfFixture(fixture));
  for (const piece of restingPieces(model)) if (!isRug(piece)) drawPiece(pen, bodyOfPiece(piece), look(piece.id));
  drawConflicts(pen, places, look);
}

/** What differs from the arrangement that is laid under the shown one. */
function laidIn({ session }: PlanModel) {
  const under = laidUnder(session);
  return (under && laidPart()?.laidChanges(under, session.arrangement())) || [];
}

/** On a canvas with the checks: mats and marks decide where they have room. */
function drawChairWords(pen: Pen, model: PlanModel): void {
  const report = model.session.report();
  const { room } = model.session.classroom();
  const grounds = [report?.findings, report?.measures.mats, pen.view, room, ...restingPieces(model)];
  const known = chairWords.get(model);
  const words = known && isSameList(known.grounds, grounds) ? known.words : placeChairWords(pen, model);
  chairWords.set(model, { grounds, words });
  for (const one of words) drawAdultSeatWords(pen, one);
}

const chairWords = new WeakMap<PlanModel, { readonly grounds: readonly unknown[]; readonly words: readonly PlacedWords[] }>();

function placeChairWords(pen: Pen, model: PlanModel): PlacedWords[] {
  const { session, moving } = model;
  const chairs = session.arrangement().pieces.filter((piece) => piece.kind === 'adult-seat' && !moving?.ids.has(piece.id));
  if (chairs.length === 0) return [];
  const isOnFloor = onFloor(pen, model);
  return chairs.flatMap((chair) => {
    const stands = takenOnFloor(pen, model, chair.id);
    // Where mats leave no floor, the words lie over one.
    const placed = (withMats: boolean): PlacedWords | null =>
      adultSeatWords(pen, bodyOfPiece(chair), [...stands, ...takenByMarks(pen, session.report(), withMats)], isOnFloor);
    return placed(true) ?? placed(false) ?? [];
  });
}

function looksOf(model: PlanModel): (id: string) => PieceLook {
  const arrangement = model.session.arrangement();
  const numbers = pieceNumbers(model.session.classroom());
  const areas = areasOfShelves(arrangement, model.session.classroom().materials);
  return (id) => ({ number: numbers.get(id) ?? null, area: areas.get(id) ?? null });
}

/** What is said of the things that rest, above them. */
function drawSaid(pen: Pen, model: PlanModel): void {
  drawChairWords(pen, model);
  laidPart()?.drawLaidLines(
    pen,
    laidIn(model).filter(({ after }) => !after || !model.moving?.ids.has(after.id)),
  );
  drawChecks(pen, model);
}

function drawOver(pen: Pen, model: PlanModel): void {
  const { session, moving } = model;
  const { pencil, proposal } = model.store.state();
  if (pencil) drawPencil(pen, session.arrangement(), pencil);
  else if (proposal) proposalPart.draw?.(pen, model, proposal);
  drawOthers(pen, model);
  drawSubjects(pen, model);
  if (moving) drawMoving(pen, model, moving);
  drawChoice(pen, model);
  for (const remark of numberedRemarks(session.classroom().notes)) {
    const place = remarkPlace(remark.note, (id) => bodyById(model, id));
    drawRemark(pen, at(pen, place), remark);
  }
  drawDraft(pen, model);
  // Above everything: wherever the paper is moved, people can say where.
  drawNeatline(pen, boundsOf(model), model.size);
  const rest = restPartHere();
  const own = moving?.bodies.flatMap((body) => body.footprint) ?? [];
  if (moving) rest?.drawRest(pen, moving.lines, own, boundsOf(model));
  rest?.drawRestWords(pen, model.store.state().rest, model.size);
}

function drawMoving(pen: Pen, model: PlanModel, moving: NonNullable<PlanModel['moving']>): void {
  for (const from of moving.from) {
    path(pen, ringOf(pen, from));
    stroke(pen, { colour: colours.pencil, width: 1, dash: [2.5, 2.5] });
  }
  const look = looksOf(model);
  for (const body of moving.bodies) {
    if (body.piece) drawPiece(pen, body, look(body.id));
    else drawFixture(pen, body);
  }
  // Beside a narrow thing the figures of both sides meet.
  const style = { colour: colours.blue, weight: 650, size: 11.5, ground: colours.leaf, taken: [] };
  for (const { from, to, mm } of moving.distances) drawDimension(pen, at(pen, from), at(pen, to), mm, style);
}

/** A ring round the chosen thing, its handles, or the chosen wall in blue. */
function drawChoice(pen: Pen, model: PlanModel): void {
  const { chosen, alsoChosen } = model.session.view();
  drawCursor(pen, model);
  if (!chosen) return;
  for (const id of alsoChosen) {
    const body = model.moving?.bodies.find((b) => b.id === id) ?? bodyById(model, id);
    if (body) drawChosen(pen, ringOf(pen, body));
  }
  if (chosen.kind === 'piece' || chosen.kind === 'fixture') {
    const body = model.moving?.bodies.find((b) => b.id === chosen.id) ?? bodyById(model, chosen.id);
    if (!body) return;
    drawChosen(pen, ringOf(pen, body));
    drawNumber(pen, model, body);
    if (body.piece?.locked || alsoChosen.length > 0) return;
    const handles = handlesOf(body, model.view, wordsBeside(model, body.id), model.isTouch);
    drawHandles(pen, handles, labelsOf(pen, model, body.id), model.isTouch);
    return;
  }
  if (chosen.kind === 'tray') drawHolder(pen, model, chosen.id);
  const room = roomOf(model);
  if (chosen.kind === 'wall') {
    const wall = room.walls.find((w) => w.corner === chosen.id);
    if (wall) line(pen, at(pen, wall.a), at(pen, wall.b), { colour: colours.blue, width: 3 });
  }
  if (chosen.kind === 'opening') {
    const opening = room.openings.find((o) => o.id === chosen.id);
    if (!opening) return;
    const thick = wallPx(pen) / model.view.k;
    const out = { x: -opening.wall.inward.x * thick, y: -opening.wall.inward.y * thick };
    const shift = (p: { x: number; y: number }) => ({ x: p.x + out.x, y: p.y + out.y });
    planPath(pen, [opening.a, opening.b, shift(opening.b), shift(opening.a)]);
    stroke(pen, { colour: colours.blue, width: 2.2 });
  }
  if (chosen.kind === 'corner') {
    const corner = rawRoomOf(model).corners.find((c) => c.id === chosen.id);
    if (!corner) return;
    const p = at(pen, corner);
    pen.ctx.beginPath();
    pen.ctx.rect(p.x - 6, p.y - 6, 12, 12);
    stroke(pen, { colour: colours.blue, width: 2.2 });
  }
}

/** A tray is too small for the plan: what it stands on is marked, or its place on the floor. */
function drawHolder(pen: Pen, model: PlanModel, material: string): void {
  const place = model.session.arrangement().placements.find((one) => one.material === material);
  if (place?.piece === null) drawPointedPlace(pen, place, place);
  const body = place?.piece ? bodyById(model, place.piece) : undefined;
  if (!body || model.moving?.ids.has(body.id)) return;
  drawPointed(pen, body);
  drawNumber(pen, model, body);
}

/** Where the keys are while several are chosen or the tape is laid, and the area that is being drawn. */
function drawCursor(pen: Pen, model: PlanModel): void {
  const { cursor } = model.store.state();
  const body = cursor && bodyById(model, cursor.id);
  if (body) {
    path(pen, ringOf(pen, body));
    stroke(pen, { colour: colours.blue, width: 2.6, dash: [3, 4] });
  }
  const line = cursor && !body ? lineOf(model, cursor) : null;
  if (line) planPath(pen, [line.a, line.b], false);
  if (line) stroke(pen, { colour: colours.blue, width: 3, dash: [3, 4] });
  if (!model.area) return;
  const { a, b } = model.area;
  planPath(pen, [a, { x: b.x, y: a.y }, b, { x: a.x, y: b.y }]);
  pen.ctx.globalAlpha = 0.1;
  fill(pen, colours.blue);
  pen.ctx.globalAlpha = 1;
  stroke(pen, { colour: colours.blue, width: 1.4, dash: [5, 3.5] });
}

function lineOf(model: PlanModel, { kind, id }: Item) {
  const room = roomOf(model);
  return (kind === 'opening' ? room.openings.find((o) => o.id === id) : room.walls.find((w) => w.corner === id)) ?? null;
}

function obstaclesOf(model: PlanModel) {
  return { bodyById: (id: string) => bodyById(model, id), room: roomOf(model), strips: seatStrips(model.session.scene()) };
}

function shownFinding(model: PlanModel): Finding | null {
  const { finding } = model.session.view();
  return model.session.report()?.findings.find((f) => f.key === finding) ?? null;
}

/** What the shown finding is about, pointed at once that was asked for. */
function drawSubjects(pen: Pen, model: PlanModel): void {
  const shown = shownFinding(model);
  if (!shown || model.store.state().pointed !== shown.key) return;
  for (const id of pointedAt(shown, model.session.scene()).things) {
    const body = bodyById(model, id);
    if (!body || model.moving?.ids.has(id)) continue;
    drawPointed(pen, body);
    drawNumber(pen, model, body);
  }
}

/** What is chosen or pointed at has its number also in a room seen from far. */
function drawNumber(pen: Pen, { session }: PlanModel, body: SceneBody): void {
  const number = pieceNumbers(session.classroom()).get(body.id);
  if (number !== undefined) drawNumberBehind(pen, body, number);
}

/** A mark where each open finding is; the one being looked at as an arrow where it is about a width. */
function drawChecks(pen: Pen, model: PlanModel): void {
  const report = model.session.report();
  if (!report) return;
  const shown = shownFinding(model);
  const place = shown && narrowPlaceOf(shown, report, obstaclesOf(model));
  drawFindings(pen, model, report, shown, place ? shown : null);
  // Below the arrow's words.
  const ringed = place ?? (shown?.at && isOfWidth(shown) ? { a: shown.at, b: shown.at } : null);
  if (ringed && shown?.key === model.store.state().pointed) drawPointedPlace(pen, ringed.a, ringed.b);
  if (place && shown) drawNarrowArrow(pen, place, shown.severity, labelsOf(pen, model).map(boxOfLabel));
}

function drawOthers(pen: Pen, model: PlanModel): void {
  for (const person of model.session.people()) {
    if (person.isMe || !person.holds) continue;
    const body = bodyById(model, person.holds);
    if (!body) continue;
    const moved = heldAt(body, person.preview);
    if (moved !== body) drawPencilOutline(pen, moved);
    drawHold(pen, moved, person);
  }
}

/** Where somebody else is just taking a thing. */
function heldAt(body: SceneBody, preview: { piece: string; x: number; y: number; rotation: number } | null): SceneBody {
  if (!body.piece || preview?.piece !== body.id) return body;
  return pieceBody({ ...body.piece, x: preview.x, y: preview.y, rotation: preview.rotation });
}
