import type { Report } from '#model/analysis/report.ts';
import { type Box, boundingBox, boxesMeet, contains, grownBox } from '#model/geometry/polygon.ts';
import { distance, type Point, sub } from '#model/geometry/vec.ts';
import type { Scene, SceneBody } from '#model/scene/types.ts';
import { pieceNumbers } from '#model/schema/pieceNumbers.ts';
import { bySeverity } from '../checks/sortFindings.ts';
import { areasOfShelves } from '../plan/areas.ts';
import { cornersOf } from '../plan/box.ts';
import { piecesInOrder } from '../plan/items.ts';
import { neatlineBounds } from '../plan/neatline.ts';
import { matsIn } from '../plan/reportParts.ts';
import { boundsOfMarks, cornersOfWords, type Mark, type Measure, shape, shifted, weights, words } from './marks.ts';
import { labelOf } from './paperLabel.ts';
import type { PaperPen } from './paperPen.ts';
import { fixtureMarks, pieceMarks } from './pieceMarks.ts';
import { remarkMarks } from './remarkMarks.ts';
import { gridMarks, NEATLINE, neatlineMarks, openingMarks, openingNames, stringMarks, wallMarks, zoneMarks } from './roomMarks.ts';
import { isMarked, severityMark } from './severityMark.ts';
import { unseenMarks, unseenOnPaper } from './unseenMarks.ts';

export interface PlanOnPaper {
  /** From (0, 0), mm. */
  readonly marks: readonly Mark[];
  readonly width: number;
  readonly height: number;
  /** Things so far outside the walls that they are not drawn. */
  readonly outside: readonly string[];
}

interface PlanLook {
  readonly scene: Scene;
  readonly report: Report | null;
  readonly measure: Measure;
  /** A mark where each open check is that asks for something. */
  readonly hasChecks: boolean;
  /** Numbers at the open remarks. */
  readonly hasRemarks: boolean;
  /** Floor that no adult sees, hatched. */
  readonly hasUnseen: boolean;
  readonly layer?: PlanLayer;
}

/** What else is drawn on a plan. */
export interface PlanLayer {
  /** How a piece is numbered, where not as in its arrangement. */
  readonly numberOf: (piece: string) => string | null;
  /** On the floor, under the things. */
  readonly under: (pen: PaperPen) => readonly Mark[];
  /** Over all; it may mind what is drawn. */
  readonly over: (pen: PaperPen, drawn: readonly Mark[]) => readonly Mark[];
}

/** mm: what stands farther than this outside the walls is not drawn */
const BEYOND = 1500;

/** The whole plan at a scale, with neatline and strings. */
export function planMarks({ scene, report, measure, hasChecks, hasRemarks, hasUnseen, layer }: PlanLook, scale: number): PlanOnPaper {
  const { room, classroom, arrangement, bodyById } = scene;
  const bounds = neatlineBounds(room.outline);
  const pen: PaperPen = {
    at: (p) => ({ x: (p.x - bounds.minX) / scale, y: (p.y - bounds.minY) / scale }),
    scale,
    measure,
    units: classroom.display.units,
    isRightToLeft: classroom.display.readingDirection === 'rtl',
  };
  const near = grownBox(bounds, BEYOND);
  const isNear = (body: SceneBody): boolean => boxesMeet(boundingBox(body.footprint), near) && isWithin(body, near);
  const pieces = piecesInOrder(arrangement, classroom).flatMap((piece) => bodyById.get(piece.id) ?? []);
  const fixtures = scene.bodies.filter((body) => body.fixture);
  const drawn = pieces.filter(isNear);
  const numbers = pieceNumbers(classroom);
  const areas = areasOfShelves(arrangement, classroom.materials);
  const draw = (body: SceneBody): Mark[] =>
    pieceMarks(pen, body, { number: layer ? layer.numberOf(body.id) : (numbers.get(body.id) ?? null), area: areas.get(body.id) ?? null });
  const isRug = (body: SceneBody): boolean => body.kind === 'rug';
  const onFloor: Mark[] = [
    ...zoneMarks(pen, classroom.room.zones),
    ...gridMarks(pen, bounds, (p) => contains(room.outline, p)),
    ...drawn.filter(isRug).flatMap(draw),
    ...(hasUnseen ? unseenMarks(pen, unseenOnPaper(scene, report)) : []),
    ...matMarks(pen, report),
    ...(layer?.under(pen) ?? []),
    ...fixtures.filter(isNear).flatMap((body) => fixtureMarks(pen, body)),
    ...drawn.filter((body) => !isRug(body)).flatMap(draw),
  ];
  const inside: Mark[] = [...wallMarks(pen, room), ...room.openings.flatMap((opening) => openingMarks(pen, opening)), ...onFloor];
  const checks = hasChecks && report ? checkMarks(pen, report, inside, near) : [];
  const remarks = hasRemarks ? remarkMarks(pen, scene, [...inside, ...checks], near) : [];
  const all: Mark[] = [
    ...inside,
    ...openingNames(pen, room),
    ...stringMarks(pen, room, bounds),
    ...chairWords(pen, room.outline.map(pen.at), drawn, [...inside, ...checks, ...remarks]),
    ...checks,
    ...remarks,
    ...(layer?.over(pen, inside) ?? []),
  ];
  const box = boundsOfMarks(all, measure);
  const [left, top] = [box.minX - NEATLINE.gap, box.minY - NEATLINE.gap];
  const marks = [...all, ...neatlineMarks(pen, bounds, top, left)];
  const whole = boundsOfMarks(marks, measure);
  return {
    marks: shifted(marks, -whole.minX, -whole.minY),
    width: whole.maxX - whole.minX,
    height: whole.maxY - whole.minY,
    outside: [...pieces, ...fixtures].filter((body) => !isNear(body)).map(({ label }) => label),
  };
}

const isWithin = (body: SceneBody, box: Box): boolean =>
  body.footprint.every((p) => p.x >= box.minX && p.x <= box.maxX && p.y >= box.minY && p.y <= box.maxY);

function matMarks(pen: PaperPen, report: Report | null): Mark[] {
  return matsIn(report).flatMap((mat) => {
    const ring = cornersOf(mat).map(pen.at);
    const center = pen.at(mat);
    const [a, b] = ring as [Point, Point];
    const [text, short] = [`mat ${mat.number}`, String(mat.number)];
    const size = 2.1;
    const said = pen.measure(text, size) < distance(a, b) - 1 ? text : short;
    const along = sub(b, a);
    const isUpright = Math.abs(along.y) > Math.abs(along.x) && said === text;
    return [
      shape(ring, { weight: weights.dimension, dash: [1.3, 0.9] }),
      ...(pen.measure(said, size) < Math.max(distance(a, b), distance(a, ring.at(-1) ?? a)) - 0.6
        ? [words(said, center.x, center.y, { size, align: 'middle', angle: isUpright ? -Math.PI / 2 : 0 })]
        : []),
    ];
  });
}

/** mm: half a severity mark; two nearer than this show the graver one */
const MARK = 1.3;
const CLOSE = 2.6;

/** Must and should where they are, beside the words of what they lie on. */
function checkMarks(pen: PaperPen, report: Report, drawn: readonly Mark[], near: Box): Mark[] {
  const labels = drawn.flatMap((mark) => (mark.kind === 'words' ? [boundingBox(cornersOfWords(mark, pen.measure))] : []));
  const placed: Point[] = [];
  return bySeverity(report).flatMap((finding) => {
    if (!finding.at || !isMarked(finding)) return [];
    const { x, y } = finding.at;
    if (x < near.minX || x > near.maxX || y < near.minY || y > near.maxY) return [];
    const at = pen.at(finding.at);
    const isTaken = (p: Point): boolean =>
      labels.some(({ minX, minY, maxX, maxY }) => p.x > minX - MARK && p.x < maxX + MARK && p.y > minY - MARK && p.y < maxY + MARK);
    if (placed.some((p) => distance(p, at) < CLOSE)) return [];
    const place = around.map(({ x, y }) => ({ x: at.x + x, y: at.y + y })).find((p) => !isTaken(p)) ?? at;
    if (placed.some((p) => distance(p, place) < CLOSE)) return [];
    placed.push(place);
    return severityMark(finding.severity, place.x, place.y, 2 * MARK);
  });
}

/** mm: the place itself, then farther and farther round it */
const around: readonly Point[] = [
  { x: 0, y: 0 },
  ...[3, 4.5, 6, 8].flatMap((far) =>
    [90, 270, 0, 180, 45, 135, 225, 315].map((turned) => ({
      x: far * Math.cos((turned * Math.PI) / 180),
      y: far * Math.sin((turned * Math.PI) / 180),
    })),
  ),
];

/** An adult's chair is too small for its words: they stand beside it, where nothing else is drawn. */
function chairWords(pen: PaperPen, floor: readonly Point[], bodies: readonly SceneBody[], drawn: readonly Mark[]): Mark[] {
  const taken = drawn.flatMap((mark) => {
    if (mark.kind === 'words') return [boundingBox(cornersOfWords(mark, pen.measure))];
    if (
      mark.kind === 'line' &&
      mark.isClosed &&
      mark.points.length < 60 &&
      mark.weight < weights.wall &&
      mark.weight > 0 &&
      mark.dash.length === 0
    )
      return [boundingBox(mark.points)];
    return [];
  });
  return bodies.flatMap((body) => {
    if (body.kind !== 'adult-seat') return [];
    const text = body.piece?.name || 'adult’s chair';
    const c = pen.at(body.center);
    const far = Math.max(1.4, Math.min(body.width, body.depth) / 2 / pen.scale) + 0.8;
    const size = 2.1;
    const places = [
      words(text, c.x + far, c.y, { size }),
      words(text, c.x - far, c.y, { size, align: 'end' }),
      words(text, c.x, c.y + far + size / 2, { size, align: 'middle' }),
      words(text, c.x, c.y - far - size / 2, { size, align: 'middle' }),
    ];
    const free = places.find((place) => {
      const corners = cornersOfWords(place, pen.measure);
      const box = boundingBox(corners);
      return corners.every((p) => contains(floor, p)) && !taken.some((other) => boxesMeet(other, box));
    });
    return free ? [free] : labelOf(pen, body, text, 400);
  });
}
