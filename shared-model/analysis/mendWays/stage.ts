import { type AccessFigures, accessFigures, shortfallOf } from '../../measures/accessFigures.ts';
import { type SeatStrip, seatStrips } from '../../measures/seats.ts';
import type { Way } from '../../measures/ways.ts';
import { measureWaysAndNarrow } from '../../measures/waysMeasure.ts';
import { buildScene } from '../../scene/build.ts';
import type { Scene, SceneBody } from '../../scene/types.ts';
import type { Arrangement, Classroom, Piece } from '../../schema/types.ts';
import { at, type Layout, NOWHERE } from './layout.ts';

/** What is moved as one: a piece, or a table with the chairs that name it. */
export interface Unit {
  /** Id of the piece, or of the table. */
  readonly id: string;
  readonly label: string;
  /** The piece first, where it stands now. */
  readonly bodies: readonly SceneBody[];
  /** Floor that children seated at it fill. */
  readonly strips: readonly SeatStrip[];
}

/** A front that cannot be come up to as it should. */
export interface Short {
  /** The front: piece or opening, and its side. */
  readonly key: string;
  readonly label: string;
  /** mm; of the way as it is judged */
  readonly width: number;
  /** Where it is held back, as two ids. */
  readonly between: readonly string[];
  readonly at: { readonly x: number; readonly y: number };
  /** The piece that the front belongs to. */
  readonly target: string;
}

/** Below this a front counts as covered: rounding only. */
const WHOLE = 1 - 1e-6;

/** An arrangement with some of its pieces moved or taken out, and what its ways are then. Trays play no part in that. */
export class Stage {
  readonly arrangement: Arrangement;
  /** As it stands. */
  readonly scene: Scene;
  readonly figures: AccessFigures;
  /** What may be moved, in the order of the file. */
  readonly free: readonly Unit[];
  readonly freeById: ReadonlyMap<string, Unit>;
  /** Which unit a piece belongs to. */
  private readonly unitOf = new Map<string, string>();
  private readonly bare: Classroom;
  /** What each front is held to where that is less than what is asked: exempt, or not covered before. */
  private readonly before: ReadonlyMap<string, { readonly judged: number; readonly share: number }>;

  constructor(
    readonly classroom: Classroom,
    arrangement: string | null | undefined,
    keep: ReadonlySet<string>,
    /** mm that are enough for the way to a front; before: it gets no worse; null: what the checks ask. */
    private readonly enoughFor: (front: string) => number | 'before' | null,
    /** What is asked of the ways. */
    access: Classroom['access'] = classroom.access,
  ) {
    this.scene = buildScene({ ...classroom, access }, arrangement);
    this.arrangement = this.scene.arrangement;
    this.bare = { ...classroom, access, materials: [], left: [], notes: [] };
    this.figures = accessFigures(this.scene);
    this.free = freeUnits(this.scene, keep);
    this.freeById = new Map(this.free.map((unit) => [unit.id, unit]));
    for (const unit of this.free) for (const body of unit.bodies) this.unitOf.set(body.id, unit.id);
    const ways = measureWaysAndNarrow(this.sceneAt(new Map())).ways;
    this.before = new Map(ways.map((way) => [frontKey(way), { judged: way.judged, share: way.share }]));
  }

  /** The unit that a piece is moved with; undefined: it stays where it is. */
  freeUnitOf(piece: string): Unit | undefined {
    return this.freeById.get(this.unitOf.get(piece) ?? '');
  }

  /** Without trays; units of `without` are taken out of the room. */
  sceneAt(layout: Layout, without: ReadonlySet<string> = nothing): Scene {
    return buildScene(this.withPieces(this.bare, [], this.piecesAt(layout, without)), this.arrangement.id);
  }

  /** The whole classroom, with its trays and all that it asks. */
  classroomAt(layout: Layout, without: ReadonlySet<string> = nothing): Classroom {
    return this.withPieces(this.classroom, this.arrangement.placements, this.piecesAt(layout, without));
  }

  private withPieces(classroom: Classroom, placements: Arrangement['placements'], pieces: readonly Piece[]): Classroom {
    return { ...classroom, arrangements: [{ ...this.arrangement, placements, pieces: [...pieces] }] };
  }

  private piecesAt(layout: Layout, without: ReadonlySet<string>): Piece[] {
    return this.arrangement.pieces.flatMap((piece) => {
      const unit = this.unitOf.get(piece.id);
      if (unit === undefined) return [piece];
      if (without.has(unit)) return [];
      const { x, y } = at(layout, unit);
      return x === 0 && y === 0 ? [piece] : [{ ...piece, x: piece.x + x, y: piece.y + y }];
    });
  }

  /** Every front whose way is narrower than `way/width` or `way/narrow` asks, or that is less covered than before. */
  shortIn(scene: Scene): Short[] {
    const { ways, narrow } = measureWaysAndNarrow(scene);
    const short = new Map<string, Short>();
    const add = (way: Way, width: number, between: readonly string[], place: Short['at'] | null): void => {
      const key = frontKey(way);
      if (!short.has(key)) short.set(key, { key, label: way.target.label, width, between, at: place ?? middleOf(way), target: way.to });
    };
    for (const way of ways) {
      if (way.from === null || this.isWideEnough(way)) continue;
      add(
        way,
        way.judged,
        way.judgedBetween.map((end) => end.id),
        way.judgedAt,
      );
    }
    for (const place of narrow) {
      if (!place.matters || place.isPinch) continue;
      const held = place.members.length > 1 && place.heldAt ? place.heldAt : place;
      if (shortfallOf(held.width, this.figures) === null) continue;
      for (const way of place.holdsBack)
        if (way.from !== null && this.enoughFor(frontKey(way)) === null) add(way, held.width, held.between, held.at);
    }
    return [...short.values()];
  }

  private isWideEnough(way: Way): boolean {
    const key = frontKey(way);
    const before = this.before.get(key);
    const enough = this.enoughFor(key);
    const least = enough === 'before' ? (before?.judged ?? 0) : enough;
    const isWide = shortfallOf(way.judged, this.figures) === null || (least !== null && way.judged >= least - 0.01);
    const isCovered = way.target.kind !== 'shelf' || way.share >= Math.min(WHOLE, (before?.share ?? 0) - 1e-6);
    return isWide && isCovered;
  }
}

const nothing: ReadonlySet<string> = new Set();

export const frontKey = (way: Pick<Way, 'to' | 'side'>): string => `${way.to}/${way.side ?? ''}`;

function middleOf({ target }: Way): { x: number; y: number } {
  const [line] = target.lines;
  return line ? { x: (line.a.x + line.b.x) / 2, y: (line.a.y + line.b.y) / 2 } : NOWHERE;
}

/** Pieces that stand in the way of a walk and are not locked, nor named in `keep`; chairs of a table go with it, or hold it. */
function freeUnits(scene: Scene, keep: ReadonlySet<string>): Unit[] {
  const strips = seatStrips(scene);
  return scene.bodies.flatMap((body): Unit[] => {
    if (!body.piece || !body.isObstacle) return [];
    const chairs = body.kind === 'table' ? scene.bodies.filter((other) => other.kind === 'seat' && other.piece?.table === body.id) : [];
    const bodies = [body, ...chairs];
    if (bodies.some(({ id, piece }) => piece?.locked || keep.has(id))) return [];
    return [{ id: body.id, label: body.label, bodies, strips: strips.filter((strip) => strip.table === body) }];
  });
}
