import { convexParts } from '../geometry/convexParts.ts';
import type { PackingFloor } from '../geometry/packingSpace.ts';
import { clockwise, edges, type Polygon } from '../geometry/polygon.ts';
import { add, distance, scale } from '../geometry/vec.ts';
import type { OpenSide, Scene, SceneBody } from '../scene/types.ts';
import type { SeatStrip } from './seats.ts';

/** Degrees: walls that run this much alike count as one direction. */
const ALIKE = 0.5;
/** No more directions than this, those of the longest walls. */
const MOST_DIRECTIONS = 6;

/**
 * The floor that work mats may lie on: within the walls, clear of furniture (a rug is none) and of seated children, of
 * leaves that swing in, and of the strip before open shelves. No mat lies across a step.
 */
export function matFloor(scene: Scene, strips: readonly SeatStrip[]): PackingFloor {
  const { room, classroom } = scene;
  return {
    outline: room.outline,
    obstacles: [
      ...room.walls.map((wall) => [wall.a, wall.b]),
      ...scene.bodies.flatMap(standingParts),
      ...strips.map(({ strip }) => strip),
      ...room.openings.flatMap(({ swingFloor }) => (swingFloor ? [swingFloor] : [])),
      ...scene.openSides.flatMap((side) => frontStrip(side, classroom.access.frontStrip)),
    ],
  };
}

function standingParts(body: SceneBody): Polygon[] {
  if (body.kind === 'rug') return [];
  if (body.fixture?.walkable) return edges(body.footprint).map(({ a, b }) => [a, b]);
  return body.isConvex ? [body.footprint] : convexParts(body.footprint);
}

/** The floor before an open side that a child stands on who takes something from it. */
function frontStrip({ piece, edge }: OpenSide, depth: number): Polygon[] {
  if (piece.closed || depth <= 0) return [];
  const out = scale(edge.outward, depth);
  return [clockwise([edge.a, edge.b, add(edge.b, out), add(edge.a, out)])];
}

/**
 * Turns at which mats are laid, degrees from 0 up to 90 (each also a quarter turn on): square to the plan, and square to
 * each direction of the walls that are long enough for a mat to lie along, the longest six.
 * @param least mm: a shorter wall gives no direction
 */
export function matTurns(scene: Scene, least: number): number[] {
  const found: { turn: number; total: number }[] = [{ turn: 0, total: Infinity }];
  const walls = scene.room.walls
    .map((wall) => ({ total: distance(wall.a, wall.b), turn: direction(wall.b.x - wall.a.x, wall.b.y - wall.a.y) }))
    .filter(({ total }) => total >= least)
    .sort((p, q) => q.total - p.total);
  for (const wall of walls) {
    const alike = found.find(({ turn }) => apart(turn, wall.turn) <= ALIKE);
    if (alike) alike.total += wall.total;
    else found.push(wall);
  }
  return found
    .sort((p, q) => q.total - p.total)
    .slice(0, MOST_DIRECTIONS)
    .map(({ turn }) => turn);
}

const direction = (x: number, y: number): number => ((((Math.atan2(y, x) * 180) / Math.PI) % 90) + 90) % 90;

function apart(p: number, q: number): number {
  const between = Math.abs(p - q) % 90;
  return Math.min(between, 90 - between);
}
