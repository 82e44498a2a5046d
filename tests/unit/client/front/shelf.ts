import { type FrontLayout, frontLayout } from '#client/front/frontLayout.ts';
import { buildScene } from '#model/scene/build.ts';
import type { Scene, SceneSide } from '#model/scene/types.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';

type Tray = [id: string, level: string, x: number, width: number, step?: number];

/** A shelf of 1.40 m with three boards, panels of 20, and trays: id, board, x, width, step (all mm). */
export function shelfRoom(trays: readonly Tray[], change: PlainRoomChange = {}): Scene {
  return buildScene(
    plainRoom({
      materials: trays.map(([id, , , width, step]) => ({
        id,
        name: `Tray ${id}`,
        area: 'mathematics',
        strand: 'counting',
        width,
        depth: 250,
        height: 80,
        ...(step !== undefined && { step }),
      })),
      pieces: [
        {
          id: 's1',
          kind: 'shelf',
          name: 'Counting',
          x: 2000,
          y: 200,
          width: 1400,
          depth: 320,
          height: 900,
          levels: [
            { id: 'top', surface: 640 },
            { id: 'mid', surface: 350 },
            { id: 'low', surface: 60 },
          ],
        },
      ],
      placements: trays.map(([id, level, x]) => ({ material: id, piece: 's1', level, x })),
      ...change,
    }),
  );
}

function onlySide(scene: Scene): SceneSide {
  const [side] = scene.sides;
  if (!side) throw new Error('the room has one shelf');
  return side;
}

export const layoutOf = (scene: Scene, gap = 50): FrontLayout => frontLayout(onlySide(scene), gap);

export function boardOf(layout: FrontLayout, key: string) {
  const board = layout.boards.find((each) => each.key === key);
  if (!board) throw new Error(`no board ${key}`);
  return board;
}

export function trayOf(layout: FrontLayout, id: string) {
  const tray = layout.boards.flatMap((board) => board.trays).find((each) => each.id === id);
  if (!tray) throw new Error(`no tray ${id}`);
  return tray;
}
