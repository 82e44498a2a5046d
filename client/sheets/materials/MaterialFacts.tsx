import type { ReactNode } from 'react';
import type { Scene } from '#model/scene/types.ts';
import type { Material } from '#model/schema/types.ts';
import { sayDecimal } from '#model/units/round.ts';
import { useSession, useUnits } from '../../session/hooks.ts';
import { TextLink } from '../../ui/TextLink.tsx';
import { MaterialDrawing } from './MaterialDrawing.tsx';
import { sayAge, sayCarried, sayMode, saySize, saySure } from './materialWords.ts';
import { type Neighbour, neighboursOf } from './neighbours.ts';

interface Props {
  readonly scene: Scene;
  readonly material: Material;
  /** "shelf 7, top · 1st" */
  readonly stands: string;
}

/** The material drawn, what it comes after and before, and where it is. */
export function MaterialTop({ scene, material, stands }: Props) {
  const units = useUnits();
  const near = neighboursOf(scene, material);
  return (
    <div className="material-top">
      <MaterialDrawing material={material} units={units} />
      <div>
        <Links word="comes after" list={near.after} />
        <Links word="comes before" list={near.before} />
        {near.missing.length > 0 && <p className="aside">asks for {near.missing.join(', ')}, which is not here</p>}
        <p>{stands}</p>
      </div>
    </div>
  );
}

/** Its values, each with how sure it is: published, common practice, an estimate, or the class's own. */
export function MaterialFacts({ material }: { material: Material }) {
  const units = useUnits();
  return (
    <dl className="material-facts">
      <Fact word="Age" sure={saySure(material, 'fromMonths')}>
        {sayAge(material)}
      </Fact>
      <Fact word="Size" sure={saySure(material, 'width')}>
        {saySize(material, units)}
      </Fact>
      <Fact word="Mass" sure={saySure(material, 'mass')}>
        {material.mass === null ? 'not known' : `${sayDecimal(material.mass, 2)} kg`}
      </Fact>
      <Fact word="Carried" sure={saySure(material, 'carried')}>
        {sayCarried(material)}
      </Fact>
      <Fact word="Isolates" sure={saySure(material, 'isolates')}>
        {material.isolates.join(', ') || 'not said'}
      </Fact>
      <Fact word="Work" sure={saySure(material, 'mode')}>
        {sayMode(material.mode)}
      </Fact>
      <Fact word="Own control" sure={saySure(material, 'control')}>
        {material.control || 'not said'}
      </Fact>
      {material.words.length > 0 && (
        <Fact word="Words" sure={saySure(material, 'words')}>
          {material.words.join(', ')}
        </Fact>
      )}
    </dl>
  );
}

const SHOWN = 3;

function Links({ word, list }: { word: string; list: readonly Neighbour[] }) {
  const session = useSession();
  if (list.length === 0) return null;
  return (
    <p>
      {word}{' '}
      {list.slice(0, SHOWN).map((each, i) => (
        <span key={each.id}>
          {i > 0 && ', '}
          <TextLink ink onPress={() => session.setView({ material: each.id })}>
            {each.name}
          </TextLink>
          {each.sure && <span className="aside"> {each.sure}</span>}
        </span>
      ))}
      {list.length > SHOWN && ` and ${list.length - SHOWN} more`}
    </p>
  );
}

function Fact({ word, sure, children }: { word: string; sure: string; children: ReactNode }) {
  return (
    <div>
      <dt>{word}</dt>
      <dd>
        {children}
        {sure !== '' && <span className="sure"> {sure}</span>}
      </dd>
    </div>
  );
}
