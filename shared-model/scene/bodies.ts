import { clockwise, isConvex, type Polygon } from '../geometry/polygon.ts';
import { add, type Point, turn } from '../geometry/vec.ts';
import type { Fixture, Piece, Side } from '../schema/types.ts';
import { keptWith } from './kept.ts';
import type { SceneBody, SceneEdge } from './types.ts';

/** Kinds that people call otherwise. */
const kindWords: Partial<Record<SceneBody['kind'], string>> = {
  'adult-seat': "adult's chair",
  'mat-stand': 'mat stand',
  other: 'thing',
  seat: 'chair',
};

/** An id that was made, not typed, is no word for people. */
export const isTypedId = (id: string): boolean => /^[A-Za-z]{0,12}-?\d{0,4}$/.test(id);

/** "shelf s7", or "shelf" alone. */
function unnamed(kind: SceneBody['kind'], id: string): string {
  const word = kindWords[kind] ?? kind;
  return isTypedId(id) ? `${word} ${id}` : word;
}

/** Corners of the polygon about a circle: an even share of four, so that the box's sides are touched. */
const ROUND_CORNERS = 48;

type Shape = Pick<Piece, 'x' | 'y' | 'width' | 'depth' | 'rotation' | 'outline' | 'round'>;

/** A piece that did not change keeps its body. */
export const pieceBody = keptWith(
  (piece: Piece): SceneBody => ({
    ...bodyShape(piece),
    id: piece.id,
    source: 'piece',
    kind: piece.kind,
    label: piece.name || unnamed(piece.kind, piece.id),
    piece,
    fixture: null,
    height: piece.height,
    isObstacle: piece.kind !== 'rug' && !(piece.kind === 'seat' && piece.table !== null),
    isSeeThrough: piece.seeThrough ?? (piece.kind === 'table' || piece.kind === 'seat' || piece.kind === 'easel'),
  }),
);

export const fixtureBody = keptWith(
  (fixture: Fixture): SceneBody => ({
    ...bodyShape(fixture),
    id: fixture.id,
    source: 'fixture',
    kind: fixture.kind,
    label: fixture.name || unnamed(fixture.kind, fixture.id),
    piece: null,
    fixture,
    height: fixture.height,
    isObstacle: !fixture.walkable,
    isSeeThrough: fixture.seeThrough ?? false,
  }),
);

function bodyShape(shape: Shape) {
  const center = { x: shape.x, y: shape.y };
  const place = (p: Point): Point => add(center, turn(p, shape.rotation));
  const footprint = clockwise(localOutline(shape).map(place));
  return {
    footprint,
    isConvex: isConvex(footprint),
    center,
    rotation: shape.rotation,
    width: shape.width,
    depth: shape.depth,
    edges: boxEdges(shape, place),
  };
}

function localOutline({ width, depth, outline, round }: Shape): Polygon {
  if (outline) return outline.map(([x, y]) => ({ x, y }));
  const w = width / 2;
  const d = depth / 2;
  if (!round)
    return [
      { x: -w, y: -d },
      { x: w, y: -d },
      { x: w, y: d },
      { x: -w, y: d },
    ];
  const step = (2 * Math.PI) / ROUND_CORNERS;
  const reach = 1 / Math.cos(step / 2); // about the circle, never inside it
  return Array.from({ length: ROUND_CORNERS }, (_, i) => ({
    x: w * reach * Math.cos((i + 0.5) * step),
    y: d * reach * Math.sin((i + 0.5) * step),
  }));
}

function boxEdges({ width, depth, rotation }: Shape, place: (p: Point) => Point): Record<Side, SceneEdge> {
  const w = width / 2;
  const d = depth / 2;
  const edge = (ax: number, ay: number, bx: number, by: number, nx: number, ny: number): SceneEdge => ({
    a: place({ x: ax, y: ay }),
    b: place({ x: bx, y: by }),
    outward: turn({ x: nx, y: ny }, rotation),
  });
  // Left end first, as seen by somebody who faces the side.
  return {
    front: edge(-w, d, w, d, 0, 1),
    back: edge(w, -d, -w, -d, 0, -1),
    left: edge(-w, -d, -w, d, -1, 0),
    right: edge(w, d, w, -d, 1, 0),
  };
}
