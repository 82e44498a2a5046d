import type { SceneBoard, SceneSide, SceneTray } from '#model/scene/types.ts';
import type { Level, Piece, Side } from '#model/schema/types.ts';
import { boardName } from './boardNames.ts';
import { type FreeRoom, freeRooms } from './gaps.ts';
import type { Standing } from './makeRoom.ts';

/** mm: a thing whose size nobody measured is drawn this wide and high, dashed. */
export const UNMEASURED = { width: 200, height: 100 } as const;
/** mm: free room narrower than this is not written out. */
const FREE_FROM = 120;
/** mm drawn above the highest board where nothing says how high things go */
const OPEN_ABOVE = 250;

export interface FrontTray extends Standing {
  readonly tray: SceneTray;
  readonly name: string;
  /** "7", or "" where the material has no step */
  readonly step: string;
  readonly height: number;
  readonly isMeasured: boolean;
}

export interface FrontBoard {
  /** the level's id; "" for the bare top */
  readonly key: string;
  readonly level: Level | null;
  readonly board: SceneBoard | null;
  /** "Top", "Middle", "Low"; "On top" for the piece's top without a board */
  readonly name: string;
  /** mm above the floor, as drawn */
  readonly surface: number;
  readonly isSurfaceKnown: boolean;
  /** mm from the left side of the shelf to the board's left end */
  readonly left: number;
  readonly width: number;
  readonly depth: number;
  readonly setBack: number;
  readonly clear: number | null;
  readonly trays: readonly FrontTray[];
  /** Free room worth writing on the drawing. */
  readonly free: readonly FreeRoom[];
}

export interface FrontLayout {
  readonly piece: Piece;
  readonly side: Side;
  /** mm */
  readonly width: number;
  readonly height: number;
  readonly panel: number;
  readonly boards: readonly FrontBoard[];
  /** mm above the floor of the highest thing that is drawn */
  readonly top: number;
}

export const sayStep = (step: number | null | undefined): string => (step === null || step === undefined ? '' : String(step));

/** One shelf side as it is drawn from the front: mm from its left side and above the floor. `trayGap`: mm kept between trays. */
export function frontLayout(side: SceneSide, trayGap = 50): FrontLayout {
  const real = side.boards.filter((board) => board.level !== null);
  const boards = side.boards.map((board): FrontBoard => {
    const index = real.indexOf(board);
    const trays = board.trays.map(frontTray);
    return {
      key: board.level?.id ?? '',
      level: board.level,
      board,
      name: index === -1 ? 'On top' : boardName(index, real.length),
      surface: board.surface ?? highestOf(side) + OPEN_ABOVE,
      isSurfaceKnown: board.surface !== null,
      left: (side.width - board.width) / 2,
      width: board.width,
      depth: board.depth,
      setBack: board.setBack,
      clear: board.clear,
      trays,
      free: freeRooms(trays, board.width, trayGap).filter((room) => room.width >= FREE_FROM),
    };
  });
  const withTop = bareTop(side) ?? [];
  const all = [...withTop, ...boards];
  const height = side.piece.height ?? highestOf(side) + OPEN_ABOVE;
  const tops = all.flatMap((board) => board.trays.map((tray) => board.surface + tray.height));
  return {
    piece: side.piece,
    side: side.side,
    width: side.width,
    height,
    panel: side.piece.panel,
    boards: all,
    top: Math.max(height, ...tops),
  };
}

const highestOf = (side: SceneSide): number => Math.max(0, ...side.piece.levels.map((level) => level.surface));

/** The piece's own top while nothing stands on it: the scene leaves it out, but a tray can be put there. */
function bareTop(side: SceneSide): FrontBoard[] | null {
  const { height } = side.piece;
  if (height === null || side.boards.some((board) => board.level === null)) return null;
  if (side.piece.levels.some((level) => level.surface >= height - 150)) return null;
  const depth = side.boards[0]?.depth ?? (side.side === 'left' || side.side === 'right' ? side.piece.width : side.piece.depth);
  return [
    {
      key: '',
      level: null,
      board: null,
      name: 'On top',
      surface: height,
      isSurfaceKnown: true,
      left: 0,
      width: side.width,
      depth,
      setBack: 0,
      clear: null,
      trays: [],
      free: [],
    },
  ];
}

function frontTray(tray: SceneTray): FrontTray {
  return {
    id: tray.material.id,
    tray,
    name: tray.material.name,
    step: sayStep(tray.material.step),
    x: tray.placement.x,
    width: tray.width ?? UNMEASURED.width,
    height: tray.height ?? UNMEASURED.height,
    isMeasured: tray.width !== null && tray.height !== null,
  };
}

/** The board a point of the drawing belongs to: the one it lies above, up to the next. mm. Null: beside or below the shelf. */
export function boardAt(layout: FrontLayout, x: number, z: number, slack: number): FrontBoard | null {
  if (x < -slack || x > layout.width + slack) return null;
  // A tray is held near its middle: a point a little under a board still means that board.
  const under = layout.boards.filter((board) => board.surface <= z + slack).sort((p, q) => q.surface - p.surface);
  const found = under[0];
  if (!found) return null;
  return z > layout.top + 400 ? null : found;
}
