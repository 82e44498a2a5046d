import { Choice } from '../ui/Choice.tsx';
import { TextField } from '../ui/TextField.tsx';
import type { Part } from './part.ts';

export function NamePart({ classroom, change }: Part) {
  const { display } = classroom;
  return (
    <fieldset className="form-part">
      <legend>Name and writing</legend>
      <div className="form-row">
        <TextField label="Name of the class" value={classroom.name} mayBeEmpty={false} onCommit={(name) => change({ name })} />
        <Choice
          label="Lengths in"
          value={display.units}
          options={[
            { value: 'metric', text: 'metres' },
            { value: 'imperial', text: 'feet and inches' },
          ]}
          onChange={(units) => change({ display: { ...display, units } })}
        />
        <Choice
          label="Children read"
          value={display.readingDirection}
          options={[
            { value: 'ltr', text: 'left to right' },
            { value: 'rtl', text: 'right to left' },
          ]}
          onChange={(readingDirection) => change({ display: { ...display, readingDirection } })}
        />
      </div>
    </fieldset>
  );
}
