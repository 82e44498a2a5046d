import type { Scene, SceneSide } from '#model/scene/types.ts';
import { sideShort } from './shelfNames.ts';

/** While a tray is held, the places beside this shelf where it can be let go. Nothing moves for them: the drawing must not slide away under the finger. */
export function DropStrip({ scene, side, over }: { scene: Scene; side: SceneSide; over: string | null }) {
  return (
    <div className="front-drop-anchor">
      <div className="front-drop-strip">
        <span className="front-drop-label">Let go on</span>
        <span className="front-drop" data-drop="table" data-over={over === 'table' || undefined}>
          the table
        </span>
        <span className="front-drop-label">or shelf</span>
        {scene.sides
          .filter((each) => each !== side)
          .map((each) => {
            const key = `${each.piece.id}/${each.side}`;
            return (
              <span key={key} className="front-drop" data-drop={key} data-over={over === key || undefined}>
                {sideShort(scene, each)}
              </span>
            );
          })}
      </div>
    </div>
  );
}
