import { LengthField } from '../ui/LengthField.tsx';
import { NumberField } from '../ui/NumberField.tsx';
import { type DraftGroup, GroupsForm } from './GroupsForm.tsx';
import type { Part } from './part.ts';

/** Ages and counts, and the child that the room must still fit. Nobody's sex is asked. */
export function ChildrenPart({ classroom, change }: Part) {
  const { children, display } = classroom;
  const groups = children.groups.map(
    ({ id, name, fromMonths, toMonths, count }): DraftGroup => ({ key: id, name, fromMonths, toMonths, count }),
  );

  function changeGroups(next: readonly DraftGroup[]) {
    const known = new Map(children.groups.map((group) => [group.id, group]));
    change({ children: { ...children, groups: next.map(({ key, ...group }) => ({ ...known.get(key), id: key, ...group })) } });
  }

  return (
    <>
      <GroupsForm groups={groups} onChange={changeGroups} title="The children now" />
      <fieldset className="form-part">
        <legend>The child the room must still fit</legend>
        <div className="form-row">
          <NumberField
            label="Percentile"
            value={children.percentile}
            least={0.1}
            most={99.9}
            isWhole={false}
            onCommit={(percentile) => percentile !== null && change({ children: { ...children, percentile } })}
            echo={`${children.percentile} of 100 children of that age are smaller`}
          />
          <LengthField
            label="Smallest child, measured"
            value={children.smallestStature}
            units={display.units}
            mayBeEmpty
            least={500}
            most={2200}
            onCommit={(smallestStature) => change({ children: { ...children, smallestStature } })}
            placeholder="not measured: from the growth table"
          />
          <LengthField
            label="Head of a child at work on a mat"
            value={children.head}
            units={display.units}
            least={100}
            most={2000}
            onCommit={(head) => head !== null && change({ children: { ...children, head } })}
          />
        </div>
      </fieldset>
    </>
  );
}
