import { useMemo, useState } from 'react';
import { areaName } from '#model/catalogue/areas.ts';
import { catalogueMaterials } from '#model/catalogue/catalogue.ts';
import type { Material } from '#model/schema/types.ts';
import { useClassroom, useSession, useUnits } from '../../session/hooks.ts';
import { capital } from '../../text/sayList.ts';
import { Button } from '../../ui/Button.tsx';
import { oneStop } from '../../ui/oneStop.ts';
import { ScrollPart } from '../../ui/ScrollPart.tsx';
import { Select } from '../../ui/Select.tsx';
import { TextLink } from '../../ui/TextLink.tsx';
import { Tick } from '../../ui/Tick.tsx';
import { isMeant } from './findMaterials.ts';
import { fromCatalogueHere } from './fromCatalogueHere.ts';
import { sureValues } from './materialWords.ts';

/** Materials of the trade to pick from, by area and strand, several at once. Those already here are marked. */
export function AddFromCatalogue({ onDone }: { onDone: () => void }) {
  const session = useSession();
  const { materials } = useClassroom();
  const [area, setArea] = useState('');
  const [typed, setTyped] = useState('');
  const [picked, setPicked] = useState<ReadonlySet<string>>(new Set());
  const here = useMemo(() => new Set(materials.flatMap((each) => each.catalogue ?? [])), [materials]);
  const areas = useMemo(() => [...new Set(catalogueMaterials.map((each) => each.area))], []);
  const shown = catalogueMaterials.filter((each) => (area === '' || each.area === area) && isMeant({ material: each, stands: '' }, typed));
  const strands = [...new Set(shown.map((each) => `${each.area}\n${each.strand}`))];

  function toggle(ids: readonly string[], isIn: boolean): void {
    const next = new Set(picked);
    for (const id of ids)
      if (isIn) next.add(id);
      else next.delete(id);
    setPicked(next);
  }

  function add(): void {
    session.undo.beginStep();
    const made = fromCatalogueHere(materials, [...picked]);
    let last: string | null = null;
    for (const material of made) last = session.commands.addMaterial(material);
    session.undo.endStep();
    session.announce(`${made.length === 1 ? 'One material is' : `${made.length} materials are`} added. They are on the table.`);
    if (last) session.setView({ material: last });
    onDone();
  }

  return (
    <>
      <div className="catalogue-filter">
        <Select
          label="Area"
          value={area}
          options={[{ value: '', text: 'all areas' }, ...areas.map((each) => ({ value: each, text: areaName(each) }))]}
          onChange={setArea}
        />
        <div className="field">
          <label htmlFor="catalogue-find">Find</label>
          <input id="catalogue-find" type="search" value={typed} onChange={(event) => setTyped(event.target.value)} />
        </div>
      </div>
      <p className="aside">
        {shown.length > 0 && shown.every((each) => here.has(each.id)) && <b>All of these are in the class already. </b>}
        Each value says how sure it is: published, common practice or estimate. Measure your own before you build on them.
      </p>
      <ScrollPart className="catalogue-list" label="Materials of the trade">
        <div ref={oneStop} className="catalogue-columns">
          {strands.map((key) => {
            const [strandArea = '', strand = ''] = key.split('\n');
            const list = shown
              .filter((each) => each.area === strandArea && each.strand === strand)
              .sort((p, q) => (p.step ?? Infinity) - (q.step ?? Infinity));
            const free = list.filter((each) => !here.has(each.id)).map((each) => each.id);
            const isAll = free.length > 0 && free.every((id) => picked.has(id));
            return (
              <fieldset key={key}>
                <legend>
                  {capital(strand)} <span className="aside">{areaName(strandArea)}</span>{' '}
                  {free.length > 0 && (
                    <TextLink onPress={() => toggle(free, !isAll)}>{isAll ? 'none of these' : `all ${free.length}`}</TextLink>
                  )}
                </legend>
                <ul>
                  {list.map((each) => (
                    <Entry
                      key={each.id}
                      material={each}
                      isHere={here.has(each.id)}
                      isPicked={picked.has(each.id)}
                      onPick={(isIn) => toggle([each.id], isIn)}
                    />
                  ))}
                </ul>
              </fieldset>
            );
          })}
        </div>
        {shown.length === 0 && <p>Nothing in the catalogue is called that. Add your own instead.</p>}
      </ScrollPart>
      <div className="verbs">
        <Button kind="strong" isDisabled={picked.size === 0} onPress={add}>
          {picked.size === 0 ? 'Add' : `Add ${picked.size}`}
        </Button>
        <TextLink onPress={onDone}>Leave it</TextLink>
      </div>
    </>
  );
}

interface EntryProps {
  readonly material: Material;
  readonly isHere: boolean;
  readonly isPicked: boolean;
  readonly onPick: (isIn: boolean) => void;
}

function Entry({ material, isHere, isPicked, onPick }: EntryProps) {
  if (isHere) {
    return (
      <li>
        <p className="catalogue-here">
          {material.step} {material.name} <b>already here</b>
        </p>
        <Values material={material} />
      </li>
    );
  }
  return (
    <li>
      <Tick isTicked={isPicked} onChange={onPick}>
        {material.step} {material.name}
      </Tick>
      <Values material={material} />
    </li>
  );
}

/** What is known of it, each value with how sure it is. */
function Values({ material }: { material: Material }) {
  const units = useUnits();
  return (
    <p className="catalogue-values">
      {sureValues(material, units).map(({ say, sure }) => (
        <span key={say}>
          {say}
          {sure !== '' && <span className="sure">{sure}</span>}
        </span>
      ))}
    </p>
  );
}
