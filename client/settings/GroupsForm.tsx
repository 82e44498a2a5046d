import { sayYears } from '../text/sayAges.ts';
import { NumberField } from '../ui/NumberField.tsx';
import { TextField } from '../ui/TextField.tsx';
import { TextLink } from '../ui/TextLink.tsx';

export interface DraftGroup {
  readonly key: string;
  readonly name: string;
  readonly fromMonths: number;
  readonly toMonths: number;
  readonly count: number;
}

interface Props {
  readonly groups: readonly DraftGroup[];
  readonly onChange: (groups: readonly DraftGroup[]) => void;
  readonly title?: string;
  readonly isNamed?: boolean;
}

/** Ages in months, as rules and growth tables count them; read back in years. */
export function GroupsForm({ groups, onChange, title = 'The children', isNamed = true }: Props) {
  const change = (key: string, set: Partial<DraftGroup>) =>
    onChange(groups.map((group) => (group.key === key ? { ...group, ...set } : group)));
  const next = groups.at(-1)?.toMonths ?? 36;

  return (
    <fieldset className="form-part">
      <legend>{title}</legend>
      {groups.length === 0 && <p className="aside">No group yet.</p>}
      {groups.map((group, index) => (
        <fieldset className="form-row group-row" key={group.key} aria-label={group.name || `Group ${index + 1}`}>
          {isNamed && <TextField label="Group" value={group.name} onCommit={(name) => change(group.key, { name })} />}
          <NumberField
            label="From, months"
            value={group.fromMonths}
            least={0}
            most={240}
            onCommit={(months) => months !== null && change(group.key, { fromMonths: months })}
            echo={`age ${sayYears(group.fromMonths)}`}
          />
          <NumberField
            label="To under, months"
            value={group.toMonths}
            least={0}
            most={240}
            onCommit={(months) => months !== null && change(group.key, { toMonths: months })}
            echo={group.toMonths <= group.fromMonths ? 'should be more than "from"' : `age ${sayYears(group.toMonths)}`}
          />
          <NumberField
            label="Children"
            value={group.count}
            least={0}
            most={10_000}
            onCommit={(count) => count !== null && change(group.key, { count })}
          />
          <div className="group-verb">
            <TextLink
              aria-label={`Strike out ${group.name || `group ${index + 1}`}`}
              onPress={() => onChange(groups.filter(({ key }) => key !== group.key))}
            >
              Strike out
            </TextLink>
          </div>
        </fieldset>
      ))}
      <div>
        <TextLink
          onPress={() =>
            onChange([
              ...groups,
              { key: freshKey(), name: '', fromMonths: Math.min(next, 228), toMonths: Math.min(next + 12, 240), count: 0 },
            ])
          }
        >
          Another group
        </TextLink>
      </div>
    </fieldset>
  );
}

/** Ids of groups are made apart by people who work at the same time. */
const freshKey = (): string => `g${crypto.randomUUID().slice(0, 8)}`;
