import { type PackingFloor, PackingSpace } from './packingSpace.ts';
import { convexPenetration } from './penetration.ts';
import { type Box, boundingBox, type Polygon } from './polygon.ts';
import { seededRandom } from './seededRandom.ts';
import { type Tile, type TilePlace, tileRing } from './tile.ts';

export interface RefillTask {
  readonly floor: PackingFloor;
  readonly tile: Tile;
  /** Turns of a tile's width from the plan's x axis, degrees; each is tried with a quarter turn more as well. */
  readonly turns: readonly number[];
  /** No more than this many will fit: stop there. */
  readonly most: number;
  /** What else has to hold of tiles together. Fewer tiles never break what more of them kept. */
  readonly isAllowed: (places: readonly TilePlace[]) => boolean;
  /** How often that may be asked: the work that is spent, counted, never timed. */
  readonly questions: number;
  readonly seed: number;
  /** Tiles that lie already. */
  readonly start: readonly TilePlace[];
}

/** A place where a tile may be put. */
interface Spot {
  readonly place: TilePlace;
  /** Whether its depth runs along the rows. */
  readonly isAcross: boolean;
  /** The tile with half the gap, and its box. */
  readonly grown: Polygon;
  readonly box: Box;
}

/** mm between the places that are tried, made larger where they would be more than MOST_SPOTS. Those against something are tried as well. */
const STEP = 150;
const MOST_SPOTS = 4000;
/** mm that tiles may share by rounding. */
const TOUCH = 1e-6;
/** Questions that a round is taken to ask at least. */
const LEAST_OF_ROUND = 30;
/** The floor is filled from nothing so often, before parts of it are. */
const FILLS = 6;
/** Of the tile's greater pitch: how far round its middle a part reaches, by how much more tiles may be put, and how far the order may be off. */
const LEAST_REACH = 1;
const MOST_REACH = 2.7;
const BESIDE = 0.27;
const OFF = 0.2;
const FOR_ONE_WAY = 1.33;

/**
 * Lays many tiles one by one: in the order of some direction, each where it is allowed beside those that lie. Again and
 * again a part of the floor is cleared and filled in another order, which stays when no fewer lie. Slower than rows, and
 * finds more where ways run between the tiles. The same task gives the same places on every device.
 *
 * Yields the best by then after every part.
 */
export function* packRefill(task: RefillTask): Generator<readonly TilePlace[], readonly TilePlace[]> {
  const { tile, turns, floor, most, isAllowed, start } = task;
  const random = seededRandom(task.seed);
  const pitch = Math.max(tile.width, tile.depth) + tile.gap;
  const box = boundingBox(floor.outline);
  let left = task.questions;
  const ask = (spots: readonly Spot[]): boolean => {
    left--;
    return isAllowed(spots.map(({ place }) => place));
  };
  let now: readonly Spot[] = start.map((place) => spotAt(tile, place, false));
  let best = now;
  const spots: Spot[] = [];
  for (const spot of spotsOf(floor, tile, turns)) {
    if (left > 0 && ask([spot])) spots.push(spot);
    if (left % TELL_EVERY === 0) yield start;
  }

  /** The spots by a direction drawn anew, not quite in order, one way of lying before the other. */
  const inSomeOrder = (some: readonly Spot[]): Spot[] => {
    const angle = 2 * Math.PI * random();
    const off = random() < 0.5 ? 0 : 2 * OFF * pitch * random();
    const across = FOR_ONE_WAY * pitch * (random() - 0.5);
    const keyed = some.map((spot) => ({
      spot,
      at: spot.place.x * Math.cos(angle) + spot.place.y * Math.sin(angle) + off * random() + (spot.isAcross ? across : 0),
    }));
    return keyed.sort((p, q) => p.at - q.at).map(({ spot }) => spot);
  };
  const filled = (stay: readonly Spot[], order: readonly Spot[]): Spot[] => {
    const laid = [...stay];
    for (const spot of order) {
      if (left <= 0 || laid.length >= most) break;
      if (!laid.some((other) => shareFloor(other, spot)) && ask([...laid, spot])) laid.push(spot);
    }
    return laid;
  };

  const rounds = task.questions / LEAST_OF_ROUND;
  for (let round = 0; round < rounds && left > 0 && best.length < most && spots.length > 0; round++) {
    const middle = { x: box.minX + random() * (box.maxX - box.minX), y: box.minY + random() * (box.maxY - box.minY) };
    const reach = round < FILLS ? Infinity : pitch * (LEAST_REACH + (MOST_REACH - LEAST_REACH) * random());
    const away = ({ place }: Spot): number => Math.max(Math.abs(place.x - middle.x), Math.abs(place.y - middle.y));
    const stay = now.filter((spot) => away(spot) > reach);
    const next = filled(stay, inSomeOrder(spots.filter((spot) => away(spot) <= reach + BESIDE * pitch)));
    if (next.length >= now.length) now = next;
    if (now.length > best.length) best = now;
    yield best.map(({ place }) => place);
  }
  return best.map(({ place }) => place);
}

/** Spots looked at between two words of how far it is. */
const TELL_EVERY = 100;

function spotAt(tile: Tile, place: TilePlace, isAcross: boolean): Spot {
  const grown = tileRing(tile, place, tile.gap / 2);
  return { place, isAcross, grown, box: boundingBox(grown) };
}

function shareFloor(p: Spot, q: Spot): boolean {
  if (p.box.minX >= q.box.maxX - TOUCH || q.box.minX >= p.box.maxX - TOUCH) return false;
  if (p.box.minY >= q.box.maxY - TOUCH || q.box.minY >= p.box.maxY - TOUCH) return false;
  return convexPenetration(p.grown, q.grown) > TOUCH;
}

/** Places on a raster, and those against what stands there; where they are many, on a wider one. */
function spotsOf(floor: PackingFloor, tile: Tile, turns: readonly number[]): Spot[] {
  const spaces = turns.map((frame) => new PackingSpace(floor, tile, frame));
  for (let step = STEP; ; step *= 1.3) {
    const found = spaces.flatMap((space) => ([0, 1] as const).flatMap((way) => spotsOfWay(space, way, step)));
    if (found.length <= MOST_SPOTS || step > tile.width + tile.depth) return found;
  }
}

function spotsOfWay(space: PackingSpace, way: 0 | 1, step: number): Spot[] {
  const found: Spot[] = [];
  const take = (v: number): void => {
    const free = [...space.free(way, v)];
    for (let i = 0; i < free.length; i += 2) {
      const [from, to] = [free[i] as number, free[i + 1] as number];
      const us = [from, to];
      for (let u = Math.ceil(from / step) * step; u < to; u += step) us.push(u);
      for (const u of apart(us, from, to)) found.push(spotAt(space.tile, space.place(way, u, v), way === 1));
    }
  };
  const { minV, maxV } = space.heights();
  const vs = space.edges(way);
  for (let v = Math.ceil(minV / step) * step; v <= maxV; v += step) vs.push(v);
  for (const v of apart(vs, minV, maxV)) take(v);
  return found;
}

/** Those of the values that lie between, in order, each once. */
function apart(values: number[], from: number, to: number): number[] {
  let last = -Infinity;
  return values
    .sort((p, q) => p - q)
    .filter((value) => {
      if (value < from || value > to || value <= last + TOUCH) return false;
      last = value;
      return true;
    });
}
