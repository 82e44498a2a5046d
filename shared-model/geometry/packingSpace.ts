import { convexSum } from './convexSum.ts';
import { area, boundingBox, type Polygon } from './polygon.ts';
import { rectangle, type Tile, type TilePlace, tileRing } from './tile.ts';
import { type Point, turn } from './vec.ts';

/** What tiles are packed into. */
export interface PackingFloor {
  /** simple ring, clockwise */
  readonly outline: Polygon;
  /** Convex clockwise rings that no tile enters; two points: a line that no tile crosses. The outline's sides are among them. */
  readonly obstacles: readonly Polygon[];
}

/** mm: fits this tight count as fits. */
export const FIT = 1e-6;
/** Nobody counts more tiles than this, the size of a postcard, in one row or on the whole floor. */
export const MOST_TILES = 200;

/** Where the middle of a tile of one turn may not lie, in a frame turned with the rows. */
interface Blocked extends Window {
  /** null: all of the box */
  readonly ring: Polygon | null;
}

interface Window {
  readonly minU: number;
  readonly maxU: number;
  readonly minV: number;
  readonly maxV: number;
}
const EVERYWHERE: Window = { minU: -Infinity, maxU: Infinity, minV: -Infinity, maxV: Infinity };

/** mm of v in which a row looks for what blocks it, and how many such bands at most. */
const BAND = 150;
const MOST_BANDS = 200;

/** What blocks each band of v, by way; in order of low u, so that spans come nearly in order. */
interface Bands {
  readonly from: number;
  readonly height: number;
  readonly lists: readonly [readonly (readonly Blocked[])[], readonly (readonly Blocked[])[]];
}

/**
 * Configuration space of a tile laid in rows: u runs along a row, v across the rows. Frame: plan turned by `frame`
 * degrees. Way 0 lays the tile's width along the row, way 1 its depth.
 */
export class PackingSpace {
  /** What one tile takes up along a row, and the height of the row, by way. */
  readonly pitch: readonly [number, number];
  readonly height: readonly [number, number];
  private blocked: readonly [Blocked[], Blocked[]] = [[], []];
  private outline: Polygon;
  private limits: Window = EVERYWHERE;
  /** Null once something was added since they were made. */
  private bands: Bands | null = null;
  // Used again by each row; lists that are emptied would have to grow anew.
  private readonly lows: number[] = [];
  private readonly highs: number[] = [];
  private taken = 0;
  private readonly inside: number[] = [];
  private readonly spans: number[] = [];

  constructor(
    floor: PackingFloor,
    readonly tile: Tile,
    readonly frame: number,
  ) {
    const long = tile.width + tile.gap;
    const short = tile.depth + tile.gap;
    this.pitch = [long, short];
    this.height = [short, long];
    this.outline = floor.outline.map((p) => turn(p, -frame));
    for (const ring of floor.obstacles) this.block(ring);
  }

  /** The same space, to be blocked further on its own. */
  copy(): PackingSpace {
    const copy = new PackingSpace({ outline: [], obstacles: [] }, this.tile, this.frame);
    copy.outline = this.outline;
    copy.blocked = [[...this.blocked[0]], [...this.blocked[1]]];
    return copy;
  }

  /** A copy for tiles whose middle lies in a part of the plan (a square). */
  around(middle: Point, reach: number): PackingSpace {
    const part = this.copy();
    const { x, y } = turn(middle, -this.frame);
    const limits = { minU: x - reach, maxU: x + reach, minV: y - reach, maxV: y + reach };
    const near = (list: readonly Blocked[]): Blocked[] =>
      list.filter((b) => b.minU < limits.maxU && b.maxU > limits.minU && b.minV < limits.maxV && b.maxV > limits.minV);
    part.blocked = [near(this.blocked[0]), near(this.blocked[1])];
    part.limits = limits;
    return part;
  }

  /** Nothing may enter the ring (convex, clockwise, or a line of two points). */
  block(ring: Polygon): void {
    const { width, depth } = this.tile;
    const turned = ring.map((p) => turn(p, -this.frame));
    this.add(0, turned, width, depth);
    this.add(1, turned, depth, width);
  }

  /** A tile that lies already: others keep the gap from it. */
  blockTile(place: TilePlace): void {
    const { width, depth, gap } = this.tile;
    const turned = tileRing(this.tile, place, gap / 2).map((p) => turn(p, -this.frame));
    this.add(0, turned, width + gap, depth + gap);
    this.add(1, turned, depth + gap, width + gap);
  }

  /** The middle of a rectangle of this size may not lie where it would enter the ring. */
  private add(way: 0 | 1, ring: Polygon, along: number, across: number): void {
    const box = boundingBox(ring);
    const isPlain = ring.length === 2 ? isStraight(box) : isBox(ring, box);
    this.blocked[way].push({
      minU: box.minX - along / 2,
      maxU: box.maxX + along / 2,
      minV: box.minY - across / 2,
      maxV: box.maxY + across / 2,
      ring: isPlain ? null : convexSum(ring, rectangle(along, across)),
    });
    this.bands = null;
  }

  /** Between which v the outline lies. */
  heights(): { readonly minV: number; readonly maxV: number } {
    const { minY, maxY } = boundingBox(this.outline);
    return { minV: minY, maxV: maxY };
  }

  /** Values of v where something that blocks ends: a row pushed towards low v comes to lie there or against another row. */
  edges(way: 0 | 1): number[] {
    const { minV, maxV } = this.limits;
    const found = minV === -Infinity ? [] : [minV];
    for (const b of this.blocked[way]) if (b.maxV >= minV && b.maxV <= maxV) found.push(b.maxV);
    return found;
  }

  /**
   * Where the middle of a tile may lie on the row at v: pairs of u, from low to high; a pair of equal values is a fit to
   * the mm. Exact. The array is used again by the next call.
   */
  free(way: 0 | 1, v: number): readonly number[] {
    const { lows, highs, inside, spans, limits } = this;
    const ends = v < limits.minV || v > limits.maxV ? 0 : this.crossOutline(v);
    if (ends === 0) {
      spans.length = 0;
      return spans;
    }
    this.taken = 0;
    this.bands ??= this.makeBands();
    const { from, height, lists } = this.bands;
    const list = lists[way];
    const band = list[Math.min(list.length - 1, Math.max(0, Math.floor((v - from) / height)))] as readonly Blocked[];
    for (let i = 0; i < band.length; i++) {
      const b = band[i] as Blocked;
      if (v <= b.minV + FIT || v >= b.maxV - FIT) continue;
      if (b.ring) this.section(b.ring, v);
      else this.span(b.minU, b.maxU);
    }
    const { taken } = this;
    let found = 0;
    let k = 0;
    let at = -Infinity;
    for (let s = 0; s + 1 < ends; s += 2) {
      const end = inside[s + 1] as number;
      at = Math.max(at, inside[s] as number);
      for (; k < taken && (lows[k] as number) < end; k++) {
        const low = lows[k] as number;
        if (low >= at - FIT) {
          spans[found++] = at;
          spans[found++] = Math.max(at, low);
        }
        at = Math.max(at, highs[k] as number);
      }
      if (at <= end) {
        spans[found++] = at;
        spans[found++] = end;
      }
    }
    if (spans.length !== found) spans.length = found;
    return spans;
  }

  /** How many tiles lie in the row whose middle is at v, packed from low u to high, at most `MOST_TILES`; their u go to `into`. */
  row(way: 0 | 1, v: number, into?: number[]): number {
    const spans = this.free(way, v);
    const pitch = this.pitch[way];
    let count = 0;
    let next = -Infinity;
    for (let i = 0; i < spans.length; i += 2) {
      const to = spans[i + 1] as number;
      for (next = Math.max(next, spans[i] as number); next <= to + FIT && count < MOST_TILES; next += pitch) {
        into?.push(Math.min(next, to));
        count++;
      }
    }
    return count;
  }

  private makeBands(): Bands {
    const { minY, maxY } = boundingBox(this.outline);
    const from = Math.max(minY, this.limits.minV);
    const size = Math.max(0, Math.min(maxY, this.limits.maxV) - from);
    const height = Math.max(BAND, size / MOST_BANDS);
    const count = Math.floor(size / height) + 1;
    const listsOf = (blocked: Blocked[]): Blocked[][] => {
      const lists = Array.from({ length: count }, (): Blocked[] => []);
      blocked.sort((p, q) => p.minU - q.minU);
      for (const b of blocked) {
        const last = Math.min(count - 1, Math.floor((b.maxV - from) / height));
        for (let k = Math.max(0, Math.floor((b.minV - from) / height)); k <= last; k++) lists[k]?.push(b);
      }
      return lists;
    };
    return { from, height, lists: [listsOf(this.blocked[0]), listsOf(this.blocked[1])] };
  }

  private span(low: number, high: number): void {
    const { lows, highs } = this;
    let i = this.taken++;
    while (i > 0 && (lows[i - 1] as number) > low) {
      lows[i] = lows[i - 1] as number;
      highs[i] = highs[i - 1] as number;
      i--;
    }
    lows[i] = low;
    highs[i] = high;
  }

  private section(ring: Polygon, v: number): void {
    let low = Infinity;
    let high = -Infinity;
    let p = ring[ring.length - 1] as Point;
    for (const q of ring) {
      if (p.y !== q.y && (p.y - v) * (q.y - v) <= 0) {
        const u = p.x + ((q.x - p.x) * (v - p.y)) / (q.y - p.y);
        if (u < low) low = u;
        if (u > high) high = u;
      }
      p = q;
    }
    if (low < high) this.span(low, high);
  }

  /** How many of `inside` say where the row at v enters and leaves the outline, within the limits. */
  private crossOutline(v: number): number {
    const { inside } = this;
    let count = 0;
    let p = this.outline[this.outline.length - 1] as Point;
    for (const q of this.outline) {
      if (p.y > v !== q.y > v) {
        const u = p.x + ((q.x - p.x) * (v - p.y)) / (q.y - p.y);
        let i = count++;
        for (; i > 0 && (inside[i - 1] as number) > u; i--) inside[i] = inside[i - 1] as number;
        inside[i] = u;
      }
      p = q;
    }
    const { minU, maxU } = this.limits;
    let kept = 0;
    for (let i = 0; i + 1 < count; i += 2) {
      const from = Math.max(minU, inside[i] as number);
      const to = Math.min(maxU, inside[i + 1] as number);
      if (from > to) continue;
      inside[kept++] = from;
      inside[kept++] = to;
    }
    return kept;
  }

  /** The place on the plan of a tile of a row. */
  place(way: 0 | 1, u: number, v: number): TilePlace {
    const at = turn({ x: u, y: v }, this.frame);
    return { ...at, turn: (((this.frame + 90 * way) % 180) + 180) % 180 };
  }
}

/** mm²: a ring that fills its box to this is the box. */
const FILLED = 1e-3;

const isStraight = ({ minX, minY, maxX, maxY }: ReturnType<typeof boundingBox>): boolean => maxX - minX < FIT || maxY - minY < FIT;

const isBox = (ring: Polygon, { minX, minY, maxX, maxY }: ReturnType<typeof boundingBox>): boolean =>
  (maxX - minX) * (maxY - minY) - area(ring) <= FILLED;
