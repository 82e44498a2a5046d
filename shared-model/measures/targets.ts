import type { FrontLine } from '../geometry/frontLine.ts';
import { add, scale, sub, unit } from '../geometry/vec.ts';
import { keptWith } from '../scene/kept.ts';
import type { OpenSide, Scene, SceneBody, SceneEdge, SceneOpening } from '../scene/types.ts';
import type { Side } from '../schema/types.ts';
import { SEATED_DEPTH, type SeatStrip, seatStrips } from './seats.ts';

export type Chairs = 'in use' | 'pushed in';

/** A front that children have to get to. It is reached when a disc touches any of its lines. */
export interface Target {
  /** A piece's, fixture's or opening's id. */
  readonly id: string;
  readonly kind: 'shelf' | 'table' | 'fixture' | 'door';
  /** null: a door has but one. */
  readonly side: Side | null;
  /** How people call it. */
  readonly label: string;
  readonly lines: readonly FrontLine[];
  readonly body: SceneBody | null;
  readonly opening: SceneOpening | null;
}

/**
 * Every open side of every children's shelf, every seated side of a table, every sink (and other fixtures that
 * say they have a front), every door and passage; in that order.
 */
export function targetsOf(scene: Scene, chairs: Chairs = 'in use', strips: readonly SeatStrip[] = seatStrips(scene)): Target[] {
  const shelves = scene.openSides.filter((side) => side.isForChildren).map(shelfTarget);
  const tables = strips.map(chairs === 'in use' ? tableTarget : pushedInTarget);
  const fixtures = scene.bodies.filter((body) => body.fixture && (body.fixture.front ?? body.kind === 'sink')).map(fixtureTarget);
  const doors = scene.room.openings.filter((opening) => opening.isWayIn).map(doorTarget);
  return [...shelves, ...tables, ...fixtures, ...doors];
}

// What did not change is the same target with the same lines, so that what is known of them can be kept.
const shelfTarget = keptWith((open: OpenSide) => bodyTarget('shelf', open.body, open.side, [edgeLine(open.edge)]));
const tableTarget = keptWith((strip: SeatStrip) => bodyTarget('table', strip.table, strip.side, freeEdges(strip.edge)));
const pushedInTarget = keptWith((strip: SeatStrip) => bodyTarget('table', strip.table, strip.side, [edgeLine(strip.edge)]));
const fixtureTarget = keptWith((body: SceneBody) => bodyTarget('fixture', body, 'front', [edgeLine(body.edges.front)]));
const doorTarget = keptWith((opening: SceneOpening): Target => {
  const { id, label } = opening;
  return { id, kind: 'door', side: null, label, lines: [doorLine(opening)], body: null, opening };
});

function bodyTarget(kind: Target['kind'], body: SceneBody, side: Side, lines: readonly FrontLine[]): Target {
  return { id: body.id, kind, side, label: body.label, lines, body, opening: null };
}

/** The inner line of a door's clear opening. */
export const doorLine = keptWith(
  (opening: SceneOpening): FrontLine => ({ a: opening.clearA, b: opening.clearB, outward: opening.wall.inward }),
);

export const edgeLine = (edge: SceneEdge): FrontLine => ({ a: edge.a, b: edge.b, outward: edge.outward });

/** The three edges of a seated strip that do not lie at the table: a child slides in from any of them. */
export function freeEdges(edge: SceneEdge): FrontLine[] {
  const out = scale(edge.outward, SEATED_DEPTH);
  const along = unit(sub(edge.b, edge.a));
  const a = add(edge.a, out);
  const b = add(edge.b, out);
  return [
    { a, b, outward: edge.outward },
    { a: edge.a, b: a, outward: scale(along, -1) },
    { a: edge.b, b, outward: along },
  ];
}
