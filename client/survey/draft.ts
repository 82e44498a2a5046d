import { newId } from '#model/document/ids.ts';
import { distance, type Point, sub } from '#model/geometry/vec.ts';
import type { Fixture, Opening, Room } from '#model/schema/types.ts';
import { sidesOf } from './fixturePlace.ts';

/** How the walk goes on after a wall. `…-diagonals`: to that side, by an angle that diagonals tell. */
export type Bend = 'right' | 'left' | 'straight' | 'angle' | 'right-diagonals' | 'left-diagonals';

/** A wall of the walk. mm, degrees clockwise. */
export interface DraftWall {
  /** Id of the corner where it begins. */
  readonly corner: string;
  /** As taped; null: not yet. */
  readonly length: number | null;
  /** As the sheet has it, until it is taped; null: a new wall. */
  readonly drawn: number | null;
  readonly bend: Bend;
  /** The typed angle, where the bend is one. */
  readonly angle: number;
}

export interface DraftDiagonal {
  readonly key: string;
  readonly from: string;
  readonly to: string;
  readonly length: number | null;
}

/** A door, window or passage on a wall of the walk; `offset` from where that wall begins. */
export interface DraftOpening {
  readonly key: string;
  readonly isNew: boolean;
  readonly wall: string;
  readonly kind: Opening['kind'];
  readonly name: string;
  readonly offset: number;
  readonly width: number;
  readonly sill: number;
  readonly swing: Opening['swing'];
}

/** A column, sink and the like, by its distances from two walls. */
export interface DraftFixture {
  readonly key: string;
  readonly isNew: boolean;
  readonly kind: Fixture['kind'];
  readonly name: string;
  readonly wall: string;
  readonly gap: number;
  /** The other wall it was measured from. */
  readonly side: string;
  readonly along: number;
  readonly width: number;
  readonly depth: number;
  readonly height: number | null;
  /** Degrees clockwise from standing with its back to the wall. */
  readonly turned: number;
}

export interface Draft {
  readonly walls: readonly DraftWall[];
  readonly diagonals: readonly DraftDiagonal[];
  readonly openings: readonly DraftOpening[];
  readonly fixtures: readonly DraftFixture[];
  readonly isSpread: boolean;
}

export const newWall = (): DraftWall => ({ corner: newId('c'), length: null, drawn: null, bend: 'right', angle: 90 });
export const emptyDraft = (): Draft => ({ walls: [newWall()], diagonals: [], openings: [], fixtures: [], isSpread: false });

/** Degrees within which a drawn corner counts as square, and the tape is asked to say otherwise. */
const SQUARE = 1;
const tenth = (value: number): number => Math.round(value * 10) / 10;

function bendOf(turn: number, isByDiagonals: boolean, isTaped: boolean): Pick<DraftWall, 'bend' | 'angle'> {
  if (isByDiagonals) return { bend: turn < 0 ? 'left-diagonals' : 'right-diagonals', angle: turn };
  const within = isTaped ? 0 : SQUARE;
  if (Math.abs(turn - 90) <= within) return { bend: 'right', angle: 90 };
  if (Math.abs(turn + 90) <= within) return { bend: 'left', angle: -90 };
  if (Math.abs(turn) <= within) return { bend: 'straight', angle: 0 };
  return { bend: 'angle', angle: isTaped ? turn : tenth(turn) };
}

/** Degrees clockwise from one run to the next, from -180 to 180. */
function turnBetween(into: Point, out: Point): number {
  const degrees = ((Math.atan2(out.y, out.x) - Math.atan2(into.y, into.x)) * 180) / Math.PI;
  return degrees - 360 * Math.round(degrees / 360);
}

/** The walk round a room that is on the sheet: what was taped of it, and for the rest how it is drawn. */
export function draftOf(room: Room): Draft {
  const { corners, survey } = room;
  const at = (i: number): Point => corners[i % corners.length] as Point;
  const walls = corners.map((corner, i): DraftWall => {
    const taped = survey?.walls.find(({ from }) => from === corner.id);
    const turn = taped?.turn ?? turnBetween(sub(at(i + 1), at(i)), sub(at(i + 2), at(i + 1)));
    const drawn = Math.round(distance(at(i), at(i + 1)));
    return { corner: corner.id, length: taped?.length ?? null, drawn, ...bendOf(turn, taped?.turnBy === 'diagonals', taped !== undefined) };
  });
  const ids = new Set(corners.map(({ id }) => id));
  const diagonals = (survey?.diagonals ?? [])
    .filter(({ from, to }) => ids.has(from) && ids.has(to))
    .map(({ from, to, length }): DraftDiagonal => ({ key: newId('k'), from, to, length }));
  const openings = room.openings
    .filter(({ from }) => ids.has(from))
    .map(({ id, from, kind, name, offset, width, sill, swing }): DraftOpening => {
      return { key: id, isNew: false, wall: from, kind, name: name ?? '', offset, width, sill, swing };
    });
  const fixtures = room.fixtures.flatMap((fixture): DraftFixture[] => {
    const place = sidesOf(room, fixture);
    if (!place) return [];
    const { id, kind, name, width, depth, height } = fixture;
    return [{ key: id, isNew: false, kind, name: name ?? '', width, depth, height, ...place }];
  });
  return { walls, diagonals, openings, fixtures, isSpread: false };
}

/** Nothing typed that would be lost. */
export const isUntouched = (draft: Draft, room: Room | null): boolean =>
  room === null
    ? draft.openings.length + draft.fixtures.length + draft.diagonals.length === 0 &&
      draft.walls.every(({ length, bend }) => length === null && bend === 'right')
    : JSON.stringify(strip(draft)) === JSON.stringify(strip(draftOf(room)));
const strip = ({ diagonals, ...rest }: Draft) => ({ ...rest, diagonals: diagonals.map(({ key: _, ...other }) => other) });

type Change = (draft: Draft) => Draft;

export const changeWall =
  (corner: string, set: Partial<DraftWall>): Change =>
  (draft) => ({ ...draft, isSpread: false, walls: draft.walls.map((wall) => (wall.corner === corner ? { ...wall, ...set } : wall)) });

/** Another wall after the given one; after the last where none is given. */
export const insertWall =
  (after: string | null, made: DraftWall): Change =>
  (draft) => {
    const index = draft.walls.findIndex(({ corner }) => corner === after);
    const walls = [...draft.walls];
    walls.splice(index < 0 ? walls.length : index + 1, 0, made);
    return { ...draft, isSpread: false, walls };
  };

/** A wall out of the walk. What stood on it goes to the wall before, and diagonals from its corner go. */
export const takeWallOut =
  (corner: string): Change =>
  (draft) => {
    if (draft.walls.length < 2) return draft;
    const index = draft.walls.findIndex((wall) => wall.corner === corner);
    const walls = draft.walls.filter((wall) => wall.corner !== corner);
    const heir = walls[Math.max(0, index - 1)]?.corner ?? '';
    const other = (wall: string, taken: string): string =>
      wall !== corner ? wall : heir !== taken ? heir : (walls.find((one) => one.corner !== taken)?.corner ?? heir);
    return {
      ...draft,
      isSpread: false,
      walls,
      diagonals: draft.diagonals.filter(({ from, to }) => from !== corner && to !== corner),
      openings: draft.openings.map((opening) => ({ ...opening, wall: opening.wall === corner ? heir : opening.wall })),
      fixtures: draft.fixtures.map((fixture) => {
        const wall = other(fixture.wall, fixture.side);
        return { ...fixture, wall, side: other(fixture.side, wall) };
      }),
    };
  };

export const changeDiagonals =
  (change: (diagonals: readonly DraftDiagonal[]) => readonly DraftDiagonal[]): Change =>
  (draft) => ({ ...draft, isSpread: false, diagonals: change(draft.diagonals) });
