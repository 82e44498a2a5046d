import { memo } from 'react';
import { choose } from '../plan/verbs.ts';
import { useSession } from '../session/hooks.ts';
import { AreaBadge } from '../ui/AreaBadge.tsx';
import { SeverityMark } from '../ui/SeverityMark.tsx';
import { isSameRow, type ListRow } from './shelfRows.ts';

interface Props {
  readonly row: ListRow;
  /** Place in its table, for things without a number of their own. */
  readonly ordinal: number;
  readonly isChosen: boolean;
  readonly hasTrays: boolean;
}

/** One thing in words. The whole line presses the button in its first cell. */
export const ShelfRow = memo(function ShelfRow({ row, ordinal, isChosen, hasTrays }: Props) {
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
          onClick={() => choose(session, isChosen ? null : item)}
        >
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

function Check({ row }: { row: ListRow }) {
  if (row.heldBy)
    return (
      <span>
        <span className={`initials ${row.edge ?? 'solid'}`}>{row.heldBy}</span> moving
      </span>
    );
  if (!row.severity) return <span className={row.check === 'fine' ? '' : 'aside'}>{row.check}</span>;
  const [gravest, ...more] = row.check.split(', ');
  return (
    <span className={`severity ${row.severity}`} title={more.length > 0 ? row.check : undefined}>
      <SeverityMark mark={row.severity} /> <span className="only-heard">{row.severity}: </span>
      {gravest}
      {more.length > 0 && (
        <>
          <span aria-hidden="true"> +{more.length}</span>
          <span className="only-heard">, {more.join(', ')}</span>
        </>
      )}
    </span>
  );
}

function isSameLine(before: Props, after: Props): boolean {
  if (before.isChosen !== after.isChosen || before.ordinal !== after.ordinal) return false;
  return isSameRow(before.row, after.row);
}
