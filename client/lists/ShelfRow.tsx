import { memo } from 'react';
import type { Severity } from '#model/findings/finding.ts';
import type { Item } from '../plan/items.ts';
import { withTape } from '../plan/lateParts.ts';
import { planStoreOf } from '../plan/planStore.ts';
import { chooseUpTo, itemsChosen, toggleChosen } from '../plan/set/chosenSet.ts';
import { choose } from '../plan/verbs.ts';
import { useSession } from '../session/hooks.ts';
import type { Session } from '../session/types.ts';
import { AreaBadge } from '../ui/AreaBadge.tsx';
import { SeverityMark } from '../ui/SeverityMark.tsx';
import { isSameRow, type ListRow, NOT_KNOWN } from './shelfRows.ts';

interface Props {
  readonly row: ListRow;
  /** Place in its table, for things without a number of their own. */
  readonly ordinal: number;
  readonly isChosen: boolean;
  /** Several are being chosen: each line is ticked or not. */
  readonly isTicking: boolean;
  readonly hasTrays: boolean;
}

/** One thing in words. The whole line presses the button in its first cell. */
export const ShelfRow = memo(function ShelfRow({ row, ordinal, isChosen, isTicking, hasTrays }: Props) {
  const session = useSession();
  const item = { kind: row.kind, id: row.id };
  return (
    <tr className={isChosen ? 'chosen' : ''}>
      <th scope="row">
        <button
          type="button"
          className="row-choose"
          aria-pressed={isChosen}
          aria-label={`Choose ${row.name}`}
          onClick={(event) => pressRow(session, item, isChosen, event)}
        >
          {isTicking && <span className={isChosen ? 'row-tick ticked' : 'row-tick'} aria-hidden="true" />}
          {row.number || ordinal}
        </button>
      </th>
      <td>{hasTrays ? <AreaBadge area={row.area} strand={row.strand} /> : row.name}</td>
      <td className="row-holds">{row.holds}</td>
      <td className="row-size">{row.size}</td>
      {hasTrays && <td className="figure">{row.trays}</td>}
      <td>
        <Check row={row} />
      </td>
    </tr>
  );
}, isSameLine);

/** With Several in hand a line is ticked, with the tape an end of it is laid there; Shift chooses up to it, Ctrl one more. */
function pressRow(session: Session, item: Item, isChosen: boolean, held: { shiftKey: boolean; ctrlKey: boolean; metaKey: boolean }): void {
  const { tool } = planStoreOf(session).state();
  const hasChosen = session.view().chosen !== null;
  if (tool?.kind === 'tape') withTape(session, (tape) => tape.layTapeOn(session, item));
  else if (tool?.kind === 'several' || ((held.ctrlKey || held.metaKey) && hasChosen)) toggleChosen(session, item);
  else if (held.shiftKey && hasChosen) chooseUpTo(session, item);
  else choose(session, isChosen && itemsChosen(session).length === 1 ? null : item);
}

function Check({ row }: { row: ListRow }) {
  if (row.heldBy)
    return (
      <span>
        <span className={`initials ${row.edge ?? 'solid'}`}>{row.heldBy}</span> {row.isMoved ? 'moving' : 'has it chosen'}
      </span>
    );
  if (row.check === NOT_KNOWN)
    return (
      <span className="severity aside">
        <SeverityMark mark="on-the-table" /> {NOT_KNOWN}
      </span>
    );
  if (!row.severity) return <span className={row.check === 'fine' ? '' : 'aside'}>{row.check}</span>;
  const graves = row.graves.split(', ') as Severity[];
  return row.check.split(', ').map((word, i) => {
    const severity = graves[i] ?? row.severity;
    return severity ? (
      <span key={word} className={`severity ${severity}`}>
        {i > 0 && <span className="only-heard">, </span>}
        <SeverityMark mark={severity} /> <span className="only-heard">{severity}: </span>
        {word}{' '}
      </span>
    ) : null;
  });
}

function isSameLine(before: Props, after: Props): boolean {
  if (before.isTicking !== after.isTicking || before.isChosen !== after.isChosen || before.ordinal !== after.ordinal) return false;
  return isSameRow(before.row, after.row);
}
