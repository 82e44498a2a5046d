import { useMemo, useRef } from 'react';
import { trayGapOf } from '#model/measures/order/classOptions.ts';
import type { Scene, SceneSide } from '#model/scene/types.ts';
import { FrontStage } from '../front/FrontStage.tsx';
import { frontLayout } from '../front/frontLayout.ts';
import { frontLines } from '../front/frontLines.ts';
import { frontView, heightFor } from '../front/frontView.ts';
import { LineLegend } from '../front/LineLegend.tsx';
import { lineHeights } from '../front/lineHeights.ts';
import { namedSide, shelfWords } from '../front/shelfNames.ts';
import { useBoxSize } from '../front/useBoxSize.ts';
import { capital } from '../text/sayList.ts';

/** px */
const MOST_HIGH = 250;
const nothing = () => undefined;
const NONE: ReadonlySet<string> = new Set();

interface Props {
  readonly scene: Scene;
  readonly side: SceneSide;
  /** The lines of the smallest child belong only to pages about reach. */
  readonly hasLines: boolean;
}

/** A shelf front of a page's room, drawn as on the sheet; below it the same in words. */
export function ExampleFront({ scene, side, hasLines }: Props) {
  const frame = useRef<HTMLDivElement>(null);
  const { width } = useBoxSize(frame);
  const layout = useMemo(() => frontLayout(side, trayGapOf(scene.classroom)), [side, scene]);
  const lines = useMemo(() => {
    const heights = hasLines ? lineHeights(scene, side, layout) : null;
    return heights ? frontLines(heights, scene.classroom.display.units) : [];
  }, [scene, side, layout, hasLines]);
  const top = Math.max(layout.top, ...lines.map((line) => line.z));
  const height = heightFor(width, layout.width, top, MOST_HIGH);
  const view = useMemo(
    () => (width > 0 ? frontView({ width, height, shelf: layout.width, top, isMirrored: false }) : null),
    [width, height, layout.width, top],
  );
  return (
    <div ref={frame} className="example-front">
      <div style={{ height }} aria-hidden="true">
        {view && (
          <FrontStage
            layout={layout}
            view={view}
            lines={lines}
            moves={new Map()}
            chosen={null}
            marked={null}
            pointed={NONE}
            held={null}
            units={scene.classroom.display.units}
            direction="ltr"
            sayShelf={(piece) => shelfWords(scene, piece)}
            canEdit={false}
            onTrayDown={nothing}
            onBoardDown={nothing}
          />
        )}
      </div>
      <LineLegend lines={lines} isShown />
      <p className="aside">
        {capital(namedSide(scene, side))}:{' '}
        {layout.boards
          .filter((board) => board.trays.length > 0)
          .map((board) => `${board.name.toLowerCase()} board, ${board.trays.map(({ name }) => name).join(', then ')}`)
          .join('; ')}
        .
      </p>
    </div>
  );
}
