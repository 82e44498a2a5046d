import { useState } from 'react';
import type { Material } from '#model/schema/types.ts';
import { ownValue } from '../../front/ownValue.ts';
import { useSession, useUnits } from '../../session/hooks.ts';
import { LengthField } from '../../ui/LengthField.tsx';
import { NumberField } from '../../ui/NumberField.tsx';
import { Select } from '../../ui/Select.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { TextLink } from '../../ui/TextLink.tsx';
import { AfterEditor } from './AfterEditor.tsx';
import { modeOptions, saySure } from './materialWords.ts';
import { sayState } from './sayWhereabouts.ts';

type Key = keyof Material & string;
interface Props {
  readonly material: Material;
  readonly materials: readonly Material[];
}
type Lengths = 'width' | 'depth' | 'height' | 'grip';

const states = (['out', 'store', 'mend', 'make', 'wanted'] as const).map((value) => ({ value, text: sayState(value) }));
const handOptions = [
  { value: '', text: 'not known' },
  { value: '1', text: 'one' },
  { value: '2', text: 'both' },
] as const;
const carriedOptions = [
  { value: '', text: 'not known' },
  { value: 'whole', text: 'whole' },
  { value: 'pieces', text: 'piece by piece' },
  { value: 'stays', text: 'it stays' },
] as const;
const standsOptions = [
  { value: 'own', text: 'a place of its own' },
  { value: 'none', text: 'no tray' },
] as const;

const list = (text: string): string[] =>
  text
    .split(',')
    .map((part) => part.trim())
    .filter((part) => part !== '');

/** Every value of a material, behind one line: its two dozen fields are only made once they are asked for. */
export function MaterialEditor(props: Props) {
  const [isOpen, setOpen] = useState(false);
  return (
    <details className="material-editor" open={isOpen} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Change its values</summary>
      {isOpen && <Values {...props} />}
    </details>
  );
}

/** Typed as people write it. What the class types is known as its own. */
function Values({ material, materials }: Props) {
  const session = useSession();
  const units = useUnits();
  const set = <K extends Key>(key: K, value: Material[K]): void => {
    session.commands.changeMaterial(material.id, ownValue(material, key, value));
  };
  const label = (text: string, key: Key) => (
    <>
      {text} {saySure(material, key) !== '' && <i className="sure">{saySure(material, key)}</i>}
    </>
  );
  const length = (text: string, key: Lengths, least = 1) => (
    <LengthField label={label(text, key)} value={material[key]} units={units} mayBeEmpty least={least} onCommit={(mm) => set(key, mm)} />
  );
  const months = (text: string, key: 'fromMonths' | 'toMonths') => (
    <NumberField label={label(text, key)} value={material[key]} least={0} most={240} mayBeEmpty onCommit={(value) => set(key, value)} />
  );

  return (
    <>
      <div className="material-fields">
        <TextField label="Name" value={material.name} mayBeEmpty={false} onCommit={(text) => set('name', text)} />
        <Select
          label="State"
          value={material.state}
          options={states}
          onChange={(state) => session.commands.changeMaterial(material.id, { state })}
        />
        <TextField label="Area" value={material.area} onCommit={(text) => set('area', text)} />
        <TextField label="Strand" value={material.strand} onCommit={(text) => set('strand', text)} />
        <NumberField
          label={label('Step in its strand', 'step')}
          value={material.step ?? null}
          least={0}
          most={100_000}
          isWhole={false}
          mayBeEmpty
          onCommit={(value) => set('step', value)}
        />
        <Select
          label="It takes"
          value={material.stands === 'none' ? 'none' : 'own'}
          options={standsOptions}
          onChange={(stands) => session.commands.changeMaterial(material.id, { stands })}
        />
        {length('Wide', 'width')}
        {length('Deep', 'depth')}
        {length('High', 'height')}
        {length('Grip above its base', 'grip', 0)}
        <NumberField
          label={label('Mass, kg', 'mass')}
          value={material.mass}
          least={0}
          most={1000}
          isWhole={false}
          mayBeEmpty
          onCommit={(value) => set('mass', value)}
        />
        <NumberField
          label={label('Carried at once, kg', 'heaviest')}
          value={material.heaviest}
          least={0}
          most={1000}
          isWhole={false}
          mayBeEmpty
          onCommit={(value) => set('heaviest', value)}
        />
        <Select
          label={label('Carried', 'carried')}
          value={material.carried ?? ''}
          options={carriedOptions}
          onChange={(value) => set('carried', value === '' ? null : value)}
        />
        <Select
          label={label('Hands', 'hands')}
          value={material.hands === null ? '' : material.hands === 1 ? '1' : '2'}
          options={handOptions}
          onChange={(value) => set('hands', value === '' ? null : value === '1' ? 1 : 2)}
        />
        {months('From, months', 'fromMonths')}
        {months('To, months', 'toMonths')}
        <NumberField
          label={label('Pieces', 'pieces')}
          value={material.pieces}
          least={0}
          most={100_000}
          mayBeEmpty
          onCommit={(value) => set('pieces', value)}
        />
        <Select
          label="Work"
          value={material.mode ?? ''}
          options={modeOptions}
          onChange={(value) => set('mode', isMode(value) ? value : null)}
        />
      </div>
      <div className="material-fields wide">
        <TextField
          label="Isolates (commas between)"
          value={material.isolates.join(', ')}
          onCommit={(text) => set('isolates', list(text))}
        />
        <TextField label="Its own control of error" value={material.control} most={2000} onCommit={(text) => set('control', text)} />
        <TextField
          label="Words (commas between)"
          value={material.words.join(', ')}
          most={2000}
          onCommit={(text) => set('words', list(text))}
        />
      </div>
      <AfterEditor material={material} materials={materials} />
      <TextLink
        onPress={() => {
          session.commands.removeMaterial(material.id);
          session.setView({ material: null, chosen: null });
          session.announce(`${material.name} is taken off the list. Take back brings it again while this page stays open.`);
        }}
      >
        Take it off the list
      </TextLink>
    </>
  );
}

const isMode = (value: string): value is NonNullable<Material['mode']> =>
  modeOptions.some((option) => option.value === value && value !== '');
