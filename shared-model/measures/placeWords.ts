import { lerp, type Point } from '../geometry/vec.ts';
import { boardWord, sayOrdinal } from '../scene/boardWord.ts';
import type { Scene, SceneBoard, SceneSide, SceneTray } from '../scene/types.ts';

/** "top board", "middle board", "2nd board", "low board"; a single one is "the board". */
function sayBoard(side: SceneSide, board: SceneBoard): string {
  const count = side.boards.length;
  return count <= 1 ? 'the board' : `${boardWord(side.boards.indexOf(board), count)} board`;
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

export const sideOf = (scene: Pick<Scene, 'sides'>, board: SceneBoard): SceneSide | undefined =>
  scene.sides.find((side) => side.boards.includes(board));

/** The point of the plan where a material's tray is met: on the edge of its side, before its middle. */
export function pointOfTray(scene: Scene, { material }: Pick<SceneTray, 'material'>): Point | undefined {
  const tray = scene.stands.get(material.id);
  const side = tray?.board ? sideOf(scene, tray.board) : undefined;
  if (!tray?.board || !side) return undefined;
  const inset = (side.width - tray.board.width) / 2;
  const along = inset + tray.placement.x + (tray.width ?? 0) / 2;
  return lerp(side.edge.a, side.edge.b, side.width === 0 ? 0.5 : Math.min(1, Math.max(0, along / side.width)));
}
