import { useState } from 'react';
import { areaName, areas as tradeAreas } from '#model/catalogue/areas.ts';
import type { Material } from '#model/schema/types.ts';
import { useClassroom, useSession, useUnits } from '../../session/hooks.ts';
import { Button } from '../../ui/Button.tsx';
import { LengthField } from '../../ui/LengthField.tsx';
import { TextLink } from '../../ui/TextLink.tsx';

/** The id of an area of the trade whose name was typed, else what was typed. */
const areaId = (typed: string): string =>
  tradeAreas.find((each) => each.name.toLowerCase() === typed.trim().toLowerCase())?.id ?? typed.trim();

/** A material of the class's own: name and place in the order now, all else when it is measured. */
export function AddOwn({ onDone }: { onDone: () => void }) {
  const session = useSession();
  const units = useUnits();
  const { materials } = useClassroom();
  const [name, setName] = useState('');
  const [area, setArea] = useState('');
  const [strand, setStrand] = useState('');
  const [step, setStep] = useState('');
  const [size, setSize] = useState<Pick<Material, 'width' | 'depth' | 'height'>>({ width: null, depth: null, height: null });
  const number = step.trim() === '' ? null : Number(step.replace(',', '.'));
  const isStepWrong = number !== null && !(Number.isFinite(number) && number >= 0 && number <= 100_000);
  const strands = [...new Set(materials.map((each) => each.strand))].filter((each) => each !== '');
  const areas = [...new Set([...tradeAreas.map((each) => each.name), ...materials.map((each) => areaName(each.area))])].filter(
    (each) => each !== '',
  );

  function add(): void {
    const known = Object.entries(size).filter(([, mm]) => mm !== null);
    const id = session.commands.addMaterial({
      name: name.trim(),
      area: areaId(area),
      strand: strand.trim(),
      step: number,
      ...size,
      sure: Object.fromEntries([...known.map(([key]) => [key, 'own']), ...(number === null ? [] : [['step', 'own']])]),
    });
    session.setView({ material: id });
    session.announce(`${name.trim()} is added. It is on the table.`);
    onDone();
  }

  return (
    <form
      className="own-form"
      onSubmit={(event) => {
        event.preventDefault();
        if (name.trim() !== '' && !isStepWrong) add();
      }}
    >
      <div className="material-fields">
        <Plain label="Name" value={name} onChange={setName} />
        <Plain label="Area" value={area} onChange={setArea} options={areas} />
        <Plain label="Strand" value={strand} onChange={setStrand} options={strands} />
        <Plain label="Step in its strand" value={step} onChange={setStep} />
        {(['width', 'depth', 'height'] as const).map((key) => (
          <LengthField
            key={key}
            label={{ width: 'Wide', depth: 'Deep', height: 'High' }[key]}
            value={size[key]}
            units={units}
            mayBeEmpty
            onCommit={(mm) => setSize((now) => ({ ...now, [key]: mm }))}
            onTyping={(mm) => setSize((now) => ({ ...now, [key]: mm }))}
          />
        ))}
      </div>
      {isStepWrong && <p className="trouble-text">The step is a number from 0 to 100000; smaller is easier.</p>}
      <div className="verbs">
        <Button kind="strong" type="submit" isDisabled={name.trim() === '' || isStepWrong}>
          Add it
        </Button>
        <TextLink onPress={onDone}>Leave it</TextLink>
      </div>
    </form>
  );
}

function Plain({
  label,
  value,
  onChange,
  options,
}: {
  label: string;
  value: string;
  onChange: (text: string) => void;
  options?: readonly string[];
}) {
  const id = `own-${label.toLowerCase().replaceAll(' ', '-')}`;
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        autoComplete="off"
        maxLength={200}
        list={options ? `${id}-list` : undefined}
        value={value}
        onChange={(event) => onChange(event.target.value)}
      />
      {options && (
        <datalist id={`${id}-list`}>
          {options.map((each) => (
            <option key={each} value={each} />
          ))}
        </datalist>
      )}
    </div>
  );
}
