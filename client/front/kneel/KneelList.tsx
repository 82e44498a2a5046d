import { seesInto, type TrayLook } from '#model/measures/kneelView.ts';
import type { SceneBoard, SceneSide } from '#model/scene/types.ts';
import { sayYearsAndMonths } from '#model/units/sayAge.ts';
import { useUnits } from '../../session/hooks.ts';
import { sayLook } from '../../text/sayKneel.ts';
import { boardName } from '../boardNames.ts';
import { Spot } from './KneelPicture.tsx';

interface Props {
  readonly side: SceneSide;
  readonly looks: readonly TrayLook[];
  /** months of the child who looks */
  readonly months: number;
  readonly chosen: string | null;
  readonly onChoose: (material: string) => void;
}

/** The same things as the picture, in words, board by board. */
export function KneelList({ side, looks, months, chosen, onChoose }: Props) {
  const units = useUnits();
  const real = side.boards.filter((board) => board.level !== null);
  const boards = side.boards.filter((board) => board.trays.length > 0);
  if (boards.length === 0) return <p>Nothing stands on this side yet.</p>;
  const hasOlder = looks.some(({ tray }) => (tray.material.fromMonths ?? 0) > months);
  return (
    <>
      {boards.map((board) => (
        <section key={board.level?.id ?? 'top'} className="kneel-board">
          <h4>{nameOf(board, real)}</h4>
          <ul>
            {looks
              .filter((one) => one.board === board)
              .map((one) => {
                const { material } = one.tray;
                const older = (material.fromMonths ?? 0) > months;
                return (
                  <li key={material.id} className={chosen === material.id ? 'chosen' : undefined}>
                    <svg width="14" height="14" viewBox="-7 -7 14 14" aria-hidden="true" focusable="false">
                      <Spot one={one} at={{ x: 0, z: 0 }} size={4.2} isChosen={false} />
                    </svg>
                    <button
                      type="button"
                      className="text-link ink"
                      aria-pressed={chosen === material.id}
                      onClick={() => onChoose(material.id)}
                    >
                      {material.name}
                    </button>
                    <span className={seesInto(one) ? 'kneel-how seen' : 'kneel-how'}>
                      {sayLook(one, units)}
                      {older && ` (meant from ${sayYearsAndMonths(material.fromMonths ?? 0)})`}
                    </span>
                  </li>
                );
              })}
          </ul>
        </section>
      ))}
      {hasOlder && <p className="aside">What is meant for older children the check looks at with the eyes of the youngest of those.</p>}
    </>
  );
}

function nameOf(board: SceneBoard, real: readonly SceneBoard[]): string {
  return board.level === null ? 'On top' : `${boardName(real.indexOf(board), real.length)} board`;
}
