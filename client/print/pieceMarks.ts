import { areaCode, areaLetters } from '#model/catalogue/areas.ts';
import { add, distance, lerp, type Point, scale, sub, unit } from '#model/geometry/vec.ts';
import type { SceneBody, SceneEdge } from '#model/scene/types.ts';
import type { Fixture, Piece, Side } from '#model/schema/types.ts';
import type { ShelfArea } from '../plan/areas.ts';
import { cornersOf, type TurnedBox } from '../plan/box.ts';
import { chairsOf } from '../plan/chairs.ts';
import { matStandWords } from '../plan/matStandWords.ts';
import { hatchOf } from './hatchLines.ts';
import { line, type Mark, round, shape, weights } from './marks.ts';
import { labelOf } from './paperLabel.ts';
import type { PaperPen } from './paperPen.ts';

interface Look {
  readonly number: string | null;
  readonly area: ShelfArea | null;
}

const thin = { weight: weights.dimension } as const;
const ringOf = (pen: PaperPen, body: SceneBody): Point[] => body.footprint.map(pen.at);
const plain = (pen: PaperPen, body: SceneBody): Mark => shape(ringOf(pen, body), { fill: 'white' });

/** One thing on the plan, whatever its kind. */
export function pieceMarks(pen: PaperPen, body: SceneBody, look: Look): Mark[] {
  const { piece } = body;
  if (!piece) return [];
  const between = (share: number): Point[] => {
    const { left, right } = body.edges;
    return [pen.at(lerp(left.a, left.b, share)), pen.at(lerp(right.b, right.a, share))];
  };
  switch (piece.kind) {
    case 'shelf':
      return shelfMarks(pen, body, piece, look);
    case 'table':
      return [
        ...chairsOf(piece).flatMap((chair) => chairMarks(pen, chair)),
        plain(pen, body),
        ...labelOf(pen, body, look.number ?? piece.name, 400),
      ];
    case 'seat':
      return chairMarks(pen, piece);
    case 'mat-stand': {
      const [whole, short] = matStandWords(piece.name);
      return [plain(pen, body), ...[0.25, 0.5, 0.75].map((share) => line(between(share), thin)), ...labelOf(pen, body, whole, 400, short)];
    }
    case 'easel':
      return [
        plain(pen, body),
        line(between(0.5), { weight: weights.openSide }),
        line([pen.at(body.edges.front.a), pen.at(body.edges.front.b)], { weight: weights.openSide }),
        ...labelOf(pen, body, piece.name || 'easel', 400),
      ];
    case 'rug':
      return rugMarks(pen, body, piece);
    case 'adult-seat':
      return adultSeatMarks(pen, body);
    case 'other':
      return [plain(pen, body), ...labelOf(pen, body, piece.name || 'other', 400)];
  }
}

function shelfMarks(pen: PaperPen, body: SceneBody, piece: Piece, { number, area }: Look): Mark[] {
  const ring = ringOf(pen, body);
  const code = area && areaCode(area.area, area.strand);
  const { left, right } = body.edges;
  return [
    shape(ring, { weight: 0, fill: 'white' }),
    ...(code ? hatchOf(ring, code) : []),
    shape(ring),
    ...(piece.divider ? [line([pen.at(lerp(left.a, left.b, 0.5)), pen.at(lerp(right.a, right.b, 0.5))])] : []),
    ...piece.sides.flatMap((side) => openSideMarks(pen, body, piece, side)),
    ...labelOf(pen, body, [number, area && areaLetters(area.area, area.strand)].filter(Boolean).join(' '), 650),
  ];
}

/** mm: from one tick to the next, and how far each stands out */
const TICK = { apart: 0.85, long: 1.5 } as const;

/** The side one takes from: thick, with one tick a board where reading starts. */
function openSideMarks(pen: PaperPen, body: SceneBody, piece: Piece, side: Side): Mark[] {
  const edge = body.edges[side];
  const [a, b] = [pen.at(edge.a), pen.at(edge.b)];
  const inset = scale(edge.outward, -weights.openSide / 2);
  const closed = scale(edge.outward, 0.7);
  return [
    line([add(a, inset), add(b, inset)], { weight: weights.openSide }),
    ...(piece.closed ? [line([add(a, closed), add(b, closed)], { weight: weights.dimension, dash: [0.8, 0.5] })] : []),
    ...ticksOf(pen, edge, a, b, piece.levels.length),
  ];
}

function ticksOf(pen: PaperPen, edge: SceneEdge, a: Point, b: Point, count: number): Mark[] {
  const [start, end] = pen.isRightToLeft ? [b, a] : [a, b];
  const along = unit(sub(end, start));
  const shown = Math.max(0, Math.min(count, Math.floor((distance(a, b) - 1) / TICK.apart)));
  return Array.from({ length: shown }, (_, i) => {
    const foot = add(start, scale(along, 0.8 + i * TICK.apart));
    return line([foot, add(foot, scale(edge.outward, TICK.long))]);
  });
}

/** A chair: a square, its back as a line. */
function chairMarks(pen: PaperPen, chair: TurnedBox): Mark[] {
  const ring = cornersOf(chair).map(pen.at);
  const [backLeft, backRight, frontRight, frontLeft] = ring as [Point, Point, Point, Point];
  return [
    shape(ring, { weight: weights.dimension, fill: 'white' }),
    line([lerp(backLeft, frontLeft, 0.18), lerp(backRight, frontRight, 0.18)], thin),
  ];
}

/** Lies on the floor and is walked on: a double line and no weight. */
function rugMarks(pen: PaperPen, body: SceneBody, piece: Piece): Mark[] {
  const ring = ringOf(pen, body);
  const center = pen.at(body.center);
  const inner = 1 - Math.min(0.4, (2 * pen.scale) / Math.max(1, Math.min(body.width, body.depth)));
  return [
    shape(ring, thin),
    shape(
      ring.map((p) => lerp(center, p, inner)),
      { weight: weights.hatch },
    ),
    ...labelOf(pen, body, piece.name || 'rug', 400),
  ];
}

function adultSeatMarks(pen: PaperPen, body: SceneBody): Mark[] {
  const center = pen.at(body.center);
  const radius = Math.max(1.4, Math.min(body.width, body.depth) / 2 / pen.scale);
  return [round(center, radius, { fill: 'white' }), round(center, Math.min(0.8, radius / 2))];
}

/** What belongs to the room: each kind has its own lines, so that it is known without its label. */
export function fixtureMarks(pen: PaperPen, body: SceneBody): Mark[] {
  const { fixture } = body;
  if (!fixture) return [];
  const front = fixture.front ? [line([pen.at(body.edges.front.a), pen.at(body.edges.front.b)], { weight: weights.openSide })] : [];
  return [...ofKind(pen, body, fixture), ...front];
}

function ofKind(pen: PaperPen, body: SceneBody, fixture: Fixture): Mark[] {
  const name = labelOf(pen, body, fixture.name || (fixture.kind === 'built-in' ? 'cupboard' : fixture.kind), 400);
  const inner = innerOf(pen, body);
  switch (fixture.kind) {
    case 'column':
    case 'partition':
      return [shape(ringOf(pen, body), { fill: 'black' })];
    case 'sink':
      return [plain(pen, body), ...basins(inner, Math.max(1, Math.round(body.width / 500)))];
    case 'radiator':
      return [plain(pen, body), ...bars(inner, Math.max(2, Math.round(body.width / 120)))];
    case 'hearth':
    case 'built-in':
      return [plain(pen, body), line([inner(0, 0), inner(1, 1)], thin), line([inner(1, 0), inner(0, 1)], thin), ...name];
    case 'step':
      return [plain(pen, body), ...bars(inner, 3), ...name];
    case 'other':
      return [plain(pen, body), ...name];
  }
}

type Inner = (across: number, down: number) => Point;

/** A point of a fixture by share of its width and depth, from back left. */
function innerOf(pen: PaperPen, body: SceneBody): Inner {
  const { back, front } = body.edges;
  return (across, down) => pen.at(lerp(lerp(back.b, back.a, across), lerp(front.a, front.b, across), down));
}

const bars = (inner: Inner, count: number): Mark[] =>
  Array.from({ length: count - 1 }, (_, i) => line([inner((i + 1) / count, 0), inner((i + 1) / count, 1)], thin));

const basins = (inner: Inner, count: number): Mark[] =>
  Array.from({ length: count }, (_, i) => {
    const [x0, x1] = [(i + 0.16) / count, (i + 0.84) / count];
    return [
      shape([inner(x0, 0.25), inner(x1, 0.25), inner(x1, 0.85), inner(x0, 0.85)], thin),
      round(inner((x0 + x1) / 2, 0.55), 0.4, { weight: 0, fill: 'black' }),
    ];
  }).flat();
