import type { Access } from '#model/schema/types.ts';
import { LengthField } from '../ui/LengthField.tsx';
import { Tick } from '../ui/Tick.tsx';
import type { Part } from './part.ts';

type Width = 'routeWidth' | 'pinchWidth' | 'pinchLength' | 'turning' | 'leastWidth' | 'frontStrip';
const widths: readonly { readonly key: Width; readonly text: string }[] = [
  { key: 'routeWidth', text: 'Width of a way' },
  { key: 'pinchWidth', text: 'Least width of a short pinch' },
  { key: 'pinchLength', text: 'Length of a short pinch' },
  { key: 'turning', text: 'Circle to turn in' },
  { key: 'leastWidth', text: 'Least width of any way' },
  { key: 'frontStrip', text: 'Floor kept before a shelf' },
];

export function AccessPart({ classroom, change }: Part) {
  const { access, display } = classroom;
  const set = (part: Partial<Access>) => change({ access: { ...access, ...part } });
  return (
    <fieldset className="form-part">
      <legend>Ways through the room</legend>
      <Tick isTicked={access.required} onChange={(required) => set({ required })}>
        A fixed accessible route is required here
      </Tick>
      <Tick isTicked={access.wheelchair} onChange={(wheelchair) => set({ wheelchair })}>
        A wheelchair user works in this room
      </Tick>
      <div className="form-row">
        {widths.map(({ key, text }) => (
          <LengthField
            key={key}
            label={text}
            value={access[key]}
            units={display.units}
            least={key === 'frontStrip' ? 0 : 1}
            onCommit={(mm) => mm !== null && set({ [key]: mm })}
          />
        ))}
      </div>
    </fieldset>
  );
}
