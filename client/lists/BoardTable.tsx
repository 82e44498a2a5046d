import { memo } from 'react';
import { type LengthUnits, sayLength } from '#model/units/sayLength.ts';
import { figure } from '../front/Carcass.tsx';
import type { FrontBoard, FrontTray } from '../front/frontLayout.ts';
import { widestRoom } from '../front/gaps.ts';
import type { BelongsAt } from '../front/orderMoves.ts';
import { alongBoard, type ReadingDirection } from '../front/readingOrder.ts';
import { toldApart } from '../front/toldApart.ts';
import { SeverityMark, severityWord } from '../ui/SeverityMark.tsx';
import type { ChecksOf } from './trayChecks.ts';

interface Props {
  readonly board: FrontBoard;
  /** Of all trays on this side. */
  readonly names: readonly string[];
  readonly units: LengthUnits;
  readonly direction: ReadingDirection;
  readonly moves: ReadonlyMap<string, BelongsAt | null>;
  readonly checks: ChecksOf;
  readonly chosen: string | null;
  /** mm between trays */
  readonly gap: number;
  readonly onChoose: (id: string) => void;
}

/** The trays of one board in reading order. */
export const BoardTable = memo(function BoardTable({ board, names, units, direction, moves, checks, chosen, gap, onChoose }: Props) {
  const room = widestRoom(board.trays, board.width, gap);
  return (
    <table className="board-table">
      <caption>
        {board.name} · {board.isSurfaceKnown ? sayLength(board.surface, units) : 'height not known'}
      </caption>
      <colgroup>
        <col className="col-step" />
        <col />
        <col className="col-mark" />
      </colgroup>
      <thead className="only-heard">
        <tr>
          <th scope="col">Step</th>
          <th scope="col">Tray</th>
          <th scope="col">Checks</th>
        </tr>
      </thead>
      <tbody>
        {alongBoard(board, direction).map((tray) => (
          <Row
            key={tray.id}
            {...{ tray, names, onChoose }}
            isChosen={tray.id === chosen}
            isMisplaced={moves.has(tray.id)}
            checks={checks}
          />
        ))}
        <tr className="board-free">
          <td />
          <td colSpan={2}>{room.width > 0 ? `${figure(room.width, units)}${units === 'metric' ? ' m' : ''} free` : 'full'}</td>
        </tr>
      </tbody>
    </table>
  );
});

/** Letters that the narrowest column takes in its lines */
const ROOM = 26;
const hasRoom = (text: string): boolean => text.length <= ROOM;

interface RowProps {
  readonly tray: FrontTray;
  readonly names: readonly string[];
  readonly isChosen: boolean;
  readonly isMisplaced: boolean;
  readonly checks: ChecksOf;
  readonly onChoose: (id: string) => void;
}

function Row({ tray, names, isChosen, isMisplaced, checks, onChoose }: RowProps) {
  const worst = checks.get(tray.id)?.[0]?.severity ?? (isMisplaced ? 'should' : null);
  return (
    <tr aria-current={isChosen || undefined} className={isMisplaced ? 'misplaced' : undefined}>
      <td className="figure">{tray.step === '' ? '–' : tray.step}</td>
      <td>
        <button
          type="button"
          className="tray-name"
          aria-pressed={isChosen}
          aria-label={tray.name}
          title={tray.name}
          onClick={() => onChoose(tray.id)}
        >
          <span>{toldApart(tray.name, names, hasRoom)}</span>
        </button>
      </td>
      <td className="tray-mark">
        {worst && (
          <>
            <SeverityMark mark={worst} />
            <span className="only-heard">{isMisplaced ? `${severityWord[worst]}: out of step` : severityWord[worst]}</span>
          </>
        )}
      </td>
    </tr>
  );
}
