import { useId, useState } from 'react';
import type { Material } from '#model/schema/types.ts';
import { useSession } from '../../session/hooks.ts';
import { Button } from '../../ui/Button.tsx';
import { TextLink } from '../../ui/TextLink.tsx';

/** What a child has done before this material: taken out one by one, and added by name from the class's list. */
export function AfterEditor({ material, materials }: { material: Material; materials: readonly Material[] }) {
  const session = useSession();
  const id = useId();
  const [typed, setTyped] = useState('');
  const nameOf = (wanted: string): string =>
    materials.find((each) => each.id === wanted || each.catalogue === wanted)?.name ?? `${wanted}, not here`;
  const found = materials.find((each) => each.name.toLowerCase() === typed.trim().toLowerCase() && each.id !== material.id);

  function add(): void {
    if (!found || material.after.includes(found.id)) return;
    session.commands.changeMaterial(material.id, {
      after: [...material.after, found.id],
      afterSure: { ...material.afterSure, [found.id]: 'own' },
    });
    setTyped('');
  }

  function take(gone: string): void {
    const { [gone]: _, ...afterSure } = material.afterSure;
    session.commands.changeMaterial(material.id, { after: material.after.filter((each) => each !== gone), afterSure });
  }

  return (
    <div className="after-editor">
      <p className="label">Comes after</p>
      <ul>
        {material.after.map((each) => (
          <li key={each}>
            {nameOf(each)} <span className="sure">{material.afterSure[each] ?? 'own'}</span>{' '}
            <TextLink onPress={() => take(each)}>
              Take out<span className="only-heard"> {nameOf(each)}</span>
            </TextLink>
          </li>
        ))}
      </ul>
      <div className="after-add">
        <div className="field">
          <label htmlFor={id}>Also after</label>
          <input
            id={id}
            list={`${id}-names`}
            autoComplete="off"
            value={typed}
            onChange={(event) => setTyped(event.target.value)}
            onKeyDown={(event) => event.key === 'Enter' && add()}
          />
          <datalist id={`${id}-names`}>
            {materials
              .filter((each) => each.id !== material.id && each.strand === material.strand)
              .map((each) => (
                <option key={each.id} value={each.name} />
              ))}
          </datalist>
        </div>
        <Button onPress={add} isDisabled={!found}>
          Add it
        </Button>
      </div>
    </div>
  );
}
