import type { Room } from '#model/schema/types.ts';
import type { LengthUnits } from '#model/units/sayLength.ts';
import { AreaField } from '../ui/AreaField.tsx';
import { TextField } from '../ui/TextField.tsx';
import { TextLink } from '../ui/TextLink.tsx';

type Rooms = Room['otherRooms'];

interface Props {
  readonly rooms: Rooms;
  readonly units: LengthUnits;
  readonly onChange: (rooms: Rooms) => void;
}

/** Other rooms that the same children use, for rule sets that add rooms up. */
export function OtherRooms({ rooms, units, onChange }: Props) {
  const changeAt = (index: number, set: Partial<Rooms[number]>) =>
    onChange(rooms.map((room, i) => (i === index ? { ...room, ...set } : room)));
  return (
    <>
      {rooms.map((room, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a room has no id, and its name changes while it is typed
        <div className="form-row" key={index}>
          <TextField label="Other room of the class" value={room.name} onCommit={(name) => changeAt(index, { name })} />
          <AreaField
            label="Its floor"
            value={room.area}
            units={units}
            least={0}
            most={10_000}
            onCommit={(area) => area !== null && changeAt(index, { area })}
          />
          <div className="group-verb">
            <TextLink aria-label={`Strike out ${room.name || 'other room'}`} onPress={() => onChange(rooms.filter((_, i) => i !== index))}>
              Strike out
            </TextLink>
          </div>
        </div>
      ))}
      <div>
        <TextLink onPress={() => onChange([...rooms, { name: '', area: 0 }])}>Another room of the class</TextLink>
      </div>
    </>
  );
}
