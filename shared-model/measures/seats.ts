import { clockwise, type Polygon } from '../geometry/polygon.ts';
import { add, type Point, scale } from '../geometry/vec.ts';
import { distanceToSegment } from '../geometry/withinRing.ts';
import { keptWith, sameList } from '../scene/kept.ts';
import type { Scene, SceneBody, SceneEdge } from '../scene/types.ts';
import type { Side } from '../schema/types.ts';

/** mm of floor a seated child fills in front of a table's edge: 19 in, row B11. */
export const SEATED_DEPTH = 483;

/** A strip of floor, 483 mm deep, that the children seated along one side of a table fill. */
export interface SeatStrip {
  readonly table: SceneBody;
  readonly side: Side;
  /** clockwise, mm on the plan */
  readonly strip: Polygon;
  /** the table's side, left to right as seen by somebody who faces it */
  readonly edge: SceneEdge;
}

interface TableSeats {
  readonly table: SceneBody;
  /** The larger of `seatSides` and the seat pieces that name the table. */
  readonly seats: number;
  /** Seat pieces that name the table, in file order. */
  readonly pieces: readonly SceneBody[];
}

export interface Seats {
  /** In file order; tables without a seat stay in, with 0. */
  readonly tables: readonly TableSeats[];
  /** Seats that belong to no table, or to one that is not in this arrangement. */
  readonly free: readonly SceneBody[];
  readonly total: number;
}

const sides: readonly Side[] = ['front', 'back', 'left', 'right'];

/** How many children can sit, table by table. */
export function measureSeats(scene: Scene): Seats {
  const { byTable, free } = seatPieces(scene);
  const tables = tablesOf(scene).map((table): TableSeats => {
    const pieces = byTable.get(table.id) ?? [];
    const said = sides.reduce((sum, side) => sum + (table.piece?.seatSides[side] ?? 0), 0);
    return { table, seats: Math.max(said, pieces.length), pieces };
  });
  return { tables, free, total: tables.reduce((sum, t) => sum + t.seats, free.length) };
}

/**
 * The floor filled by seated children, one strip for each seated side of each table, in file order.
 * A side is seated when `seatSides` says so or when a seat piece that names the table stands nearest to it.
 */
export function seatStrips(scene: Scene): readonly SeatStrip[] {
  const { byTable } = seatPieces(scene);
  const strips: SeatStrip[] = [];
  for (const table of tablesOf(scene)) {
    const seats = byTable.get(table.id);
    for (const strip of seats ? stripsWith(table, seats) : stripsSaid(table)) strips.push(strip);
  }
  latest = sameList(latest, strips);
  return latest;
}

function stripsWith(table: SceneBody, seats: readonly SceneBody[]): SeatStrip[] {
  const seated = new Set<Side>(sides.filter((side) => (table.piece?.seatSides[side] ?? 0) > 0));
  for (const seat of seats) seated.add(nearestSide(table, seat.center));
  return sides.filter((side) => seated.has(side)).map((side) => stripsOf(table)[side]);
}

const stripsSaid = keptWith((table: SceneBody): readonly SeatStrip[] => stripsWith(table, []));

/** While something else is dragged the strips are the very list. */
let latest: readonly SeatStrip[] = [];

/** mm: a place this near to a strip's outline lies on it. */
const ON = 1;

/** The strip that something measured to a place ends at, instead of at the table itself; of the table with that id, where one is given. */
export function stripAt(strips: readonly SeatStrip[], { id, x, y }: Point & { readonly id?: string }): SeatStrip | undefined {
  const p = { x, y };
  const asked = id === undefined ? strips : stripsByTable(strips).get(id);
  return asked?.find(
    ({ strip, edge }) =>
      distanceToSegment(edge, p) > ON && strip.some((a, i) => distanceToSegment({ a, b: strip[(i + 1) % strip.length] as Point }, p) <= ON),
  );
}

/** Every narrow place asks for those of one table. */
const stripsByTable = keptWith((strips: readonly SeatStrip[]): ReadonlyMap<string, readonly SeatStrip[]> => {
  const byTable = new Map<string, SeatStrip[]>();
  for (const one of strips) byTable.set(one.table.id, [...(byTable.get(one.table.id) ?? []), one]);
  return byTable;
});

const stripsOf = keptWith((table: SceneBody): Readonly<Record<Side, SeatStrip>> => {
  const strip = (side: Side): SeatStrip => {
    const edge = table.edges[side];
    const out = scale(edge.outward, SEATED_DEPTH);
    return { table, side, strip: clockwise([edge.a, edge.b, add(edge.b, out), add(edge.a, out)]), edge };
  };
  return { front: strip('front'), back: strip('back'), left: strip('left'), right: strip('right') };
});

/** The side of the table's box that lies nearest to a point; with ties the first of front, back, left, right. */
function nearestSide(table: SceneBody, p: Point): Side {
  let best: Side = 'front';
  let least = Infinity;
  for (const side of sides) {
    const away = distanceToSegment(table.edges[side], p);
    if (away >= least - 1e-6) continue;
    least = away;
    best = side;
  }
  return best;
}

const tablesOf = (scene: Scene): SceneBody[] => scene.bodies.filter((body) => body.kind === 'table');

function seatPieces(scene: Scene): { byTable: Map<string, SceneBody[]>; free: SceneBody[] } {
  const byTable = new Map<string, SceneBody[]>();
  const free: SceneBody[] = [];
  for (const body of scene.bodies) {
    if (body.kind !== 'seat' || !body.piece) continue;
    const table = body.piece.table === null ? undefined : scene.bodyById.get(body.piece.table);
    if (table?.kind !== 'table') {
      free.push(body);
      continue;
    }
    const list = byTable.get(table.id);
    if (list) list.push(body);
    else byTable.set(table.id, [body]);
  }
  return { byTable, free };
}
