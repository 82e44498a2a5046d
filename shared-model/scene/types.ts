import type { Polygon } from '../geometry/polygon.ts';
import type { Point, Segment } from '../geometry/vec.ts';
import type { Arrangement, Classroom, Fixture, Level, Material, Opening, Piece, Placement, Side } from '../schema/types.ts';

/**
 * One arrangement of a classroom as the analyser sees it: frozen, derived once per change.
 * mm on the plan (x right, y down), degrees clockwise.
 */
export interface Scene {
  readonly classroom: Classroom;
  readonly arrangement: Arrangement;
  readonly room: SceneRoom;
  /** Pieces in file order, then fixtures in file order. */
  readonly bodies: readonly SceneBody[];
  readonly bodyById: ReadonlyMap<string, SceneBody>;
  /** Every open side of every shelf, in the order of the class's walk. */
  readonly sides: readonly SceneSide[];
  /** The same without what stands on them: who asks only where shelves open has nothing to do with a tray that moves. */
  readonly openSides: readonly OpenSide[];
  /** Where each placed material stands; key: material id. */
  readonly stands: ReadonlyMap<string, SceneTray>;
  readonly materialById: ReadonlyMap<string, Material>;
}

/** What of a scene says what stands on which shelf, and in which order a child meets it. */
export type ShelvesScene = Pick<Scene, 'classroom' | 'sides' | 'stands' | 'materialById'>;

export interface SceneRoom {
  /** Inner face of the walls, clockwise (turned round if the file ran the other way). */
  readonly outline: Polygon;
  readonly walls: readonly SceneWall[];
  readonly openings: readonly SceneOpening[];
  /** False when walls cross or touch themselves, or enclose nothing: nothing that needs floor can be told. */
  readonly isSound: boolean;
  /** m² inside the walls */
  readonly area: number;
}

export interface SceneWall extends Segment {
  /** "wall:" and the id of the corner it starts at */
  readonly id: string;
  readonly corner: string;
  /** unit vector into the room */
  readonly inward: Point;
}

export interface SceneOpening {
  readonly id: string;
  /** How people call it: where it leads, "door d1", or "the door in the north wall" where its id was made, not typed. */
  readonly label: string;
  readonly raw: Opening;
  readonly wall: SceneWall;
  /** Jambs on the wall's inner face, in the wall's direction. */
  readonly a: Point;
  readonly b: Point;
  /** mm of clear opening; null: not known (a door whose leaf was not measured). A passage's is its width. */
  readonly clear: number | null;
  /** Where the clear opening lies, in the wall's direction; taken as the whole width when not known. */
  readonly clearA: Point;
  readonly clearB: Point;
  /** Floor that the leaf sweeps inside the room (a fan of at most 5 degrees a step); null when it swings out, slides or there is none. */
  readonly swingFloor: Polygon | null;
  /** A door or a passage: somewhere to come in. */
  readonly isWayIn: boolean;
  readonly isMain: boolean;
}

export interface SceneBody {
  readonly id: string;
  readonly source: 'piece' | 'fixture';
  readonly kind: Piece['kind'] | Fixture['kind'];
  /** How people call it: "shelf 7", its name, or kind and id. */
  readonly label: string;
  readonly piece: Piece | null;
  readonly fixture: Fixture | null;
  /** Footprint on the plan, clockwise. A round one is a 48-gon about the circle (at most 0.22 % outside it). */
  readonly footprint: Polygon;
  readonly isConvex: boolean;
  readonly center: Point;
  readonly rotation: number;
  readonly width: number;
  readonly depth: number;
  /** mm; null: not known */
  readonly height: number | null;
  /** Stands in the way of a walking body: false for rugs, walkable fixtures and seats that belong to a table. */
  readonly isObstacle: boolean;
  readonly isSeeThrough: boolean;
  /** Box edges by side, left to right as seen by somebody who faces the side; outward unit normal. */
  readonly edges: Readonly<Record<Side, SceneEdge>>;
}

export interface SceneEdge {
  /** left end as seen by a person who faces this side */
  readonly a: Point;
  readonly b: Point;
  readonly outward: Point;
}

/** One open side of a shelf. */
export interface OpenSide {
  readonly body: SceneBody;
  readonly piece: Piece;
  readonly side: Side;
  readonly edge: SceneEdge;
  readonly isForChildren: boolean;
  /** mm, length of the side */
  readonly width: number;
}

/** One open side of a shelf with its boards, top first. */
export interface SceneSide extends OpenSide {
  /** The side itself: the same object as long as the shelf is. */
  readonly open: OpenSide;
  readonly boards: readonly SceneBoard[];
}

export interface SceneBoard {
  readonly piece: Piece;
  readonly side: Side;
  /** null: the piece's top, without a board of its own */
  readonly level: Level | null;
  /** mm above the floor; null: the piece's height is not known */
  readonly surface: number | null;
  /** mm of usable length, between the side panels; the whole width on top */
  readonly width: number;
  readonly depth: number;
  /** mm, board's front edge behind the piece's front */
  readonly setBack: number;
  /** mm of clear height; null: open above */
  readonly clear: number | null;
  /** Trays by x, left to right. */
  readonly trays: readonly SceneTray[];
}

export interface SceneTray {
  readonly material: Material;
  readonly placement: Placement;
  /** null: on the floor, or on a thing that is not a shelf side */
  readonly board: SceneBoard | null;
  /** mm; null: the material's size is not known */
  readonly width: number | null;
  readonly depth: number | null;
  readonly height: number | null;
}
