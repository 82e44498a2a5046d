import { lerp, type Point } from '../geometry/vec.ts';
import type { Scene, SceneBoard, SceneSide, SceneTray } from '../scene/types.ts';

const ordinals = ['1st', '2nd', '3rd'];
/** "1st", "2nd", "3rd", "4th", … of a count from 1. */
export const sayOrdinal = (n: number): string =>
  (n % 100 > 10 && n % 100 < 14 ? undefined : ordinals[(n % 10) - 1])?.replace(/^\d/, String(n)) ?? `${n}th`;

/** "top board", "middle board", "2nd board", "bottom board"; a single one is "the board". */
function sayBoard(side: SceneSide, board: SceneBoard): string {
  const count = side.boards.length;
  const index = side.boards.indexOf(board);
  if (count <= 1) return 'the board';
  if (index === 0) return 'top board';
  if (index === count - 1) return 'bottom board';
  return count === 3 ? 'middle board' : `${sayOrdinal(index + 1)} board`;
}

/** Where a tray stands on its board: "middle board, 4th" from the side where reading begins. Null when it is on no shelf. */
export function sayPlace(scene: Scene, material: string): string | null {
  const tray = scene.stands.get(material);
  const side = tray?.board ? sideOf(scene, tray.board) : undefined;
  if (!tray?.board || !side) return null;
  const { trays } = tray.board;
  const fromLeft = trays.indexOf(tray) + 1;
  const place = scene.classroom.display.readingDirection === 'ltr' ? fromLeft : trays.length + 1 - fromLeft;
  return `${sayBoard(side, tray.board)}, ${sayOrdinal(place)}`;
}

export const sideOf = (scene: Scene, board: SceneBoard): SceneSide | undefined => scene.sides.find((side) => side.boards.includes(board));

/** The point of the plan where a tray is met: on the edge of its side, before its middle. */
export function pointOfTray(scene: Scene, tray: SceneTray): Point | undefined {
  const side = tray.board ? sideOf(scene, tray.board) : undefined;
  if (!tray.board || !side) return undefined;
  const inset = (side.width - tray.board.width) / 2;
  const along = inset + tray.placement.x + (tray.width ?? 0) / 2;
  return lerp(side.edge.a, side.edge.b, side.width === 0 ? 0.5 : Math.min(1, Math.max(0, along / side.width)));
}
