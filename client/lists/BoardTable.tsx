import { Fragment, memo } from 'react';
import { type LengthUnits, sayLength } from '#model/units/sayLength.ts';
import type { FrontBoard, FrontTray } from '../front/frontLayout.ts';
import { widestRoom } from '../front/gaps.ts';
import type { BelongsAt } from '../front/orderMoves.ts';
import { alongBoard, type ReadingDirection } from '../front/readingOrder.ts';
import { figure } from '../text/figure.ts';
import { capital } from '../text/sayList.ts';
import { SeverityMark, severityWord } from '../ui/SeverityMark.tsx';
import type { ChecksOf } from './trayChecks.ts';

interface Props {
  readonly board: FrontBoard;
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
export const BoardTable = memo(function BoardTable({ board, units, direction, moves, checks, chosen, gap, onChoose }: Props) {
  const along = alongBoard(board, direction);
  const strands = along.map(({ tray }) => tray.material.strand.trim());
  // Steps begin again with each strand: it is named where it begins, or once for the board.
  const only = new Set(strands).size === 1 ? (strands[0] ?? '') : '';
  const room = widestRoom(board.trays, board.width, gap);
  return (
    <table className="board-table">
      <caption>
        {board.name} · {board.isSurfaceKnown ? sayLength(board.surface, units) : 'height not known'}
        {only !== '' && ` · ${only}`}
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
        {inFamilies(along).map(({ tray, opens, kind }, i) => (
          <Fragment key={tray.id}>
            {only === '' && strands[i] !== strands[i - 1] && (
              <tr className="board-strand">
                <td colSpan={3}>{strands[i] || 'without a strand'}</td>
              </tr>
            )}
            {opens && (
              <tr className="board-family">
                <td />
                <td colSpan={2}>{opens}</td>
              </tr>
            )}
            <Row {...{ tray, kind, onChoose }} isChosen={tray.id === chosen} isMisplaced={moves.has(tray.id)} checks={checks} />
          </Fragment>
        ))}
        <tr className="board-free">
          <td />
          <td colSpan={2}>{room.width > 0 ? `${figure(room.width, units)}${units === 'metric' ? ' m' : ''} free` : 'full'}</td>
        </tr>
      </tbody>
    </table>
  );
});

interface InFamily {
  readonly tray: FrontTray;
  readonly kind: string;
  /** "Dressing frame:" before the first of several beside one another; "": none */
  readonly opens: string;
}

/** Names of the form "family: kind" that stand beside one another have their family once, above them. */
function inFamilies(trays: readonly FrontTray[]): InFamily[] {
  const families = trays.map(({ name }) => /^[^:]+: /.exec(name)?.[0] ?? '');
  return trays.map((tray, i) => {
    const family = families[i] ?? '';
    const isAfter = family !== '' && families[i - 1] === family;
    const isBefore = family !== '' && families[i + 1] === family;
    if (!isAfter && !isBefore) return { tray, kind: tray.name, opens: '' };
    const kind = tray.name.slice(family.length);
    return { tray, kind: capital(kind), opens: isAfter ? '' : family.trim() };
  });
}

interface RowProps {
  readonly tray: FrontTray;
  /** What is written of its name: the rest stands above it for the whole family. */
  readonly kind: string;
  readonly isChosen: boolean;
  readonly isMisplaced: boolean;
  readonly checks: ChecksOf;
  readonly onChoose: (id: string) => void;
}

function Row({ tray, kind, isChosen, isMisplaced, checks, onChoose }: RowProps) {
  const worst = checks.get(tray.id)?.[0]?.severity ?? (isMisplaced ? 'should' : null);
  return (
    <tr aria-current={isChosen || undefined} className={isMisplaced ? 'misplaced' : undefined}>
      <td className="figure">{tray.step === '' ? '–' : tray.step}</td>
      <td>
        <button type="button" className="tray-name" aria-label={tray.name} aria-pressed={isChosen} onClick={() => onChoose(tray.id)}>
          {kind}
        </button>
      </td>
      <td className="tray-mark">
        {worst && (
          <>
            <SeverityMark mark={worst} />
            <span className="only-heard">{`${severityWord[worst]}${isMisplaced ? ', out of step' : ''}`}</span>
          </>
        )}
      </td>
    </tr>
  );
}
