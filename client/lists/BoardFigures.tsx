import type { SceneSide } from '#model/scene/types.ts';
import { sayLength } from '#model/units/sayLength.ts';
import type { FrontBoard, FrontLayout } from '../front/frontLayout.ts';
import { newBoardAt } from '../front/newBoardAt.ts';
import { spaceBoards } from '../front/spaceBoards.ts';
import { useSession, useUnits } from '../session/hooks.ts';
import { LengthField } from '../ui/LengthField.tsx';
import { TextLink } from '../ui/TextLink.tsx';

/** The boards of the shelf in figures: height, clear height, set back; add and take out. */
export function BoardFigures({ side, layout }: { side: SceneSide; layout: FrontLayout }) {
  const session = useSession();
  const units = useUnits();
  const { piece } = side;
  const boards = layout.boards.filter((board) => board.level !== null);

  function add(): void {
    const surface = newBoardAt(layout);
    session.commands.addLevel(session.arrangement().id, piece.id, { surface });
    session.announce(`A board is added at ${sayLength(surface, units)}.`);
  }

  return (
    <>
      <ul>
        {boards.map((board) => (
          <BoardFields key={board.key} piece={piece.id} board={board} />
        ))}
      </ul>
      <div className="verbs">
        <TextLink onPress={add}>Add a board</TextLink>
        {boards.length > 2 && <TextLink onPress={() => spaceBoards(session, side)}>Space the boards evenly</TextLink>}
      </div>
    </>
  );
}

function BoardFields({ piece, board }: { piece: string; board: FrontBoard }) {
  const session = useSession();
  const units = useUnits();
  const { level } = board;
  if (!level) return null;
  const change = (set: { surface?: number; clear?: number | null; setBack?: number; depth?: number | null }): void => {
    if (!session.commands.changeLevel(session.arrangement().id, piece, level.id, set)) {
      session.announce('The board is gone; somebody took it out.');
      return;
    }
    const [mm] = Object.values(set);
    session.announce(`${board.name} board: ${typeof mm === 'number' ? sayLength(mm, units) : 'as the boards around it leave it'}.`);
  };
  const aria = (what: string) => (
    <>
      {what}
      <span className="only-heard">, {board.name.toLowerCase()} board</span>
    </>
  );
  return (
    <li>
      <b>{board.name}</b>
      <LengthField
        label={aria('Above the floor')}
        value={level.surface}
        units={units}
        least={0}
        onCommit={(mm) => mm !== null && change({ surface: mm })}
      />
      <LengthField
        label={aria('Clear height')}
        value={level.clear}
        units={units}
        mayBeEmpty
        placeholder={board.clear === null ? 'open' : sayLength(board.clear, units)}
        onCommit={(mm) => change({ clear: mm })}
      />
      <LengthField
        label={aria('Set back')}
        value={level.setBack}
        units={units}
        least={0}
        onCommit={(mm) => mm !== null && change({ setBack: mm })}
      />
      <LengthField
        label={aria('Deep')}
        value={level.depth}
        units={units}
        mayBeEmpty
        placeholder={sayLength(board.depth, units)}
        onCommit={(mm) => change({ depth: mm })}
      />
      <TextLink
        onPress={() => {
          session.commands.removeLevel(session.arrangement().id, piece, level.id);
          session.announce(
            board.trays.length === 0
              ? 'The board is taken out.'
              : `The board is taken out; ${board.trays.length} trays from it are on the table.`,
          );
        }}
      >
        Take out<span className="only-heard"> the {board.name.toLowerCase()} board</span>
      </TextLink>
    </li>
  );
}
