import { standsOnFloor } from '#model/measures/standsOnFloor.ts';
import type { Scene, SceneBoard, SceneSide } from '#model/scene/types.ts';
import type { Material } from '#model/schema/types.ts';
import { boardName } from '../../front/boardNames.ts';
import { frontLayout } from '../../front/frontLayout.ts';
import { alongBoard, type ReadingDirection } from '../../front/readingOrder.ts';

/** Where a material is: on a board, standing elsewhere in the room, on the table, meant for the floor, not out, or nothing to put anywhere. */
export type Whereabouts =
  | {
      readonly at: 'board';
      readonly side: SceneSide;
      readonly board: SceneBoard;
      readonly boardName: string;
      readonly place: number;
      readonly order: number;
    }
  | { readonly at: 'room' }
  | { readonly at: 'table' }
  | { readonly at: 'floor' }
  | { readonly at: 'away' }
  | { readonly at: 'none' };

const kept = new WeakMap<Scene, ReadonlyMap<string, Whereabouts>>();

/** Whereabouts of every material. `order` counts on over all shelf sides as a child meets them. The same map for the same scene. */
export function whereaboutsOf(scene: Scene): ReadonlyMap<string, Whereabouts> {
  const known = kept.get(scene);
  if (known) return known;
  const map = new Map<string, Whereabouts>();
  const direction: ReadingDirection = scene.classroom.display.readingDirection;
  let order = 0;
  for (const side of scene.sides) {
    const layout = frontLayout(side);
    const real = layout.boards.filter((board) => board.level !== null);
    for (const board of layout.boards) {
      const name = board.level ? boardName(real.indexOf(board), real.length) : board.name;
      alongBoard(board, direction).forEach((tray, i) => {
        if (!board.board) return;
        map.set(tray.id, { at: 'board', side, board: board.board, boardName: name, place: i + 1, order });
        order += 1;
      });
    }
  }
  for (const material of scene.classroom.materials) if (!map.has(material.id)) map.set(material.id, elsewhere(scene, material));
  kept.set(scene, map);
  return map;
}

function elsewhere(scene: Scene, material: Material): Whereabouts {
  if (scene.stands.has(material.id)) return { at: 'room' };
  if (material.state !== 'out') return { at: 'away' };
  if (material.stands !== 'own') return { at: 'none' };
  // No board takes it, so it waits for none.
  return { at: standsOnFloor(material) ? 'floor' : 'table' };
}
