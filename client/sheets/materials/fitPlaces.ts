import { trayGapOf } from '#model/measures/order/classOptions.ts';
import type { Scene, SceneSide } from '#model/scene/types.ts';
import type { Material } from '#model/schema/types.ts';
import { firstFit } from '../../front/firstFit.ts';
import { type FrontBoard, type FrontLayout, frontLayout } from '../../front/frontLayout.ts';
import { widestRoom } from '../../front/gaps.ts';
import { sideName } from '../../front/shelfNames.ts';

/** One board on which a material could or could not stand. mm. */
export interface FitPlace {
  readonly layout: FrontLayout;
  readonly side: SceneSide;
  readonly board: FrontBoard;
  /** "shelf 7" */
  readonly where: string;
  /** "3rd", its place on the board; null: it does not fit */
  readonly ordinal: string | null;
  /** In two or three words: "in step", "breaks the thread", "too narrow". */
  readonly word: string;
  readonly why: string;
  /** Trays that change place when it is put there, itself among them; null: it does not fit. */
  readonly places: ReadonlyMap<string, number> | null;
  /** Others that slide along. */
  readonly slides: number;
  /** The widest free room of the board. */
  readonly free: number;
}

export function fitPlaces(scene: Scene, material: Material): FitPlace[] {
  if (material.width === null) return [];
  const gap = trayGapOf(scene.classroom);
  const direction = scene.classroom.display.readingDirection;
  return scene.sides.flatMap((side) => {
    const layout: FrontLayout = frontLayout(side, gap);
    return layout.boards
      .filter((board) => board.level !== null)
      .map((board): FitPlace => {
        const width = material.width ?? 0;
        const others = board.trays.filter((tray) => tray.id !== material.id);
        const free = widestRoom(others, board.width, gap).width;
        const found = firstFit({ ...layout, boards: [board] }, material.id, width, material, gap, direction);
        return {
          layout,
          side,
          board,
          where: sideName(scene, side),
          ordinal: null,
          word: found ? '' : 'too narrow',
          why: '',
          places: found?.places ?? null,
          slides: (found?.places.size ?? 1) - 1,
          free,
        };
      });
  });
}
