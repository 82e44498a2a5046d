import { memo, useDeferredValue, useMemo, useSyncExternalStore } from 'react';
import { type Item, isSame } from '../plan/items.ts';
import { canBeSeveral, isInSet } from '../plan/set/chosenSet.ts';
import { LateSetVerbs } from '../plan/set/LateSetStrip.tsx';
import { takeUpTool } from '../plan/tools.ts';
import { useChosenItems } from '../plan/useChosenItems.ts';
import { usePlanState } from '../plan/usePlanState.ts';
import { useArrangement, useClassroom, useReport, useSession } from '../session/hooks.ts';
import { MayChange } from '../session/MayChange.tsx';
import '../styles/shelfList.css';
import { inPlace } from '../ui/inPlace.ts';
import { oneStop } from '../ui/oneStop.ts';
import { TextLink } from '../ui/TextLink.tsx';
import { ListFooter } from './ListFooter.tsx';
import { RowVerbs } from './RowVerbs.tsx';
import { ShelfRow } from './ShelfRow.tsx';
import { isSameRow, type ListRow, type ListRows, listRows } from './shelfRows.ts';

/** The same things as the plan, in words: same items, same order, same verbs; chosen here is chosen there. */
export function ShelfList() {
  const rows = useListRows();
  return (
    <div className="shelf-list">
      <div className="panel-head">
        <h2>Shelf list</h2>
        <Several />
      </div>
      <Rows caption="Shelves" rows={rows.shelves} heads={['No', 'Area', 'Holds', 'Long × high', 'Trays', 'Checks']} hasTrays />
      <ListFooter />
      <Rows caption="Tables and other things" rows={rows.others} heads={['No', 'Thing', 'Called', 'Long × high', 'Checks']} />
      <Rows caption="What belongs to the room" rows={rows.fixtures} heads={['No', 'Thing', 'Kind', 'Long × high', 'Checks']} />
      <Rows caption="Doors and windows" rows={rows.openings} heads={['No', 'Kind', 'Leads to', 'Wide', 'Checks']} />
      <Rows caption="Walls" rows={rows.walls} heads={['No', 'Wall', 'At', 'Long', 'Checks']} />
    </div>
  );
}

/** Several lines at once: ticked, they are chosen together. */
function Several() {
  const session = useSession();
  const { tool } = usePlanState('tool');
  const isTicking = tool?.kind === 'several';
  return (
    <>
      <span className="aside">as on the plan, in words</span>
      <MayChange>
        <TextLink aria-pressed={isTicking} onPress={() => takeUpTool(session, { kind: 'several' })}>
          {isTicking ? 'Done ticking' : 'Choose several'}
        </TextLink>
      </MayChange>
    </>
  );
}

function useListRows(): ListRows {
  const session = useSession();
  const classroom = useClassroom();
  const arrangement = useArrangement();
  const report = useDeferredValue(useReport());
  const holders = useHolders();
  // biome-ignore lint/correctness/useExhaustiveDependencies: the rows are read from the session, these say when it reads differently
  return useMemo(() => listRows(session, report), [session, classroom, arrangement, report, holders]);
}

/** Who else holds what: text, so that a colleague's every frame is no news to the list. */
function useHolders(): string {
  const session = useSession();
  const holders = (): string =>
    session
      .people()
      .map((p) => (p.isMe || !p.holds ? '' : `${p.initials} ${p.edge} ${p.holds}`))
      .join();
  return useSyncExternalStore(session.subscribe, holders);
}

interface RowsProps {
  readonly caption: string;
  readonly rows: readonly ListRow[];
  readonly heads: readonly string[];
  readonly hasTrays?: boolean;
}

const Rows = memo(function Rows({ caption, rows, heads, hasTrays = false }: RowsProps) {
  const items = useChosenItems();
  const [first] = items;
  const isTicking = usePlanState('tool').tool?.kind === 'several';
  if (rows.length === 0)
    return hasTrays ? <p className="aside list-empty">No shelf yet. Press Shelf above the plan, then where it stands.</p> : null;
  return (
    <table ref={oneStop} className={`list-table shelf-table${hasTrays ? ' with-trays' : ''}${isTicking ? ' ticking' : ''}`}>
      <caption className={hasTrays ? 'only-heard' : ''}>{caption}</caption>
      <thead>
        <tr>
          {inPlace(heads).map(({ place, entry: head }) => (
            <th key={place} scope="col" className={head === 'Trays' ? 'figure' : ''}>
              {head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((row, i) => {
          const item: Item = { kind: row.kind, id: row.id };
          const isChosen = isInSet(items, item);
          const isFirst = first !== undefined && isSame(first, item);
          return [
            <ShelfRow
              key={row.id}
              row={row}
              ordinal={i + 1}
              isChosen={isChosen}
              isTicking={isTicking && canBeSeveral(item)}
              hasTrays={hasTrays}
            />,
            isFirst && (
              <tr key={`${row.id}/verbs`} className="row-verbs">
                <td colSpan={heads.length}>
                  {items.length > 1 ? (
                    <fieldset className="verbs" aria-label={`Verbs of ${items.length} things`}>
                      <LateSetVerbs items={items} />
                    </fieldset>
                  ) : (
                    <RowVerbs item={item} name={row.name} isLocked={row.isLocked} />
                  )}
                </td>
              </tr>
            ),
          ];
        })}
      </tbody>
    </table>
  );
}, isSameTable);

/** A line that reads the same need not be the same object. */
function isSameTable(before: RowsProps, now: RowsProps): boolean {
  return before.rows.length === now.rows.length && now.rows.every((row, i) => isSameRow(row, before.rows[i]));
}
