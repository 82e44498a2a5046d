import { useId } from 'react';
import type { Scene } from '#model/scene/types.ts';
import { MayChange } from '../../session/MayChange.tsx';
import { TextLink } from '../../ui/TextLink.tsx';
import type { RowOrder } from './materialRows.ts';
import { sayCounts } from './sayCounts.ts';
import { areaKey, areaTitle } from './threads.ts';

interface Props {
  readonly scene: Scene;
  readonly area: string | null;
  readonly typed: string;
  readonly order: RowOrder;
  readonly onTyped: (text: string) => void;
  readonly onOrder: (order: RowOrder) => void;
  readonly onArea: (area: string | null) => void;
  readonly onAdd: (what: 'catalogue' | 'own') => void;
}

const orders: readonly RowOrder[] = ['step', 'shelf', 'checks'];

/** What the table shows: area, what was typed, in which order; and adding to it. */
export function TableHead({ scene, area, typed, order, onTyped, onOrder, onArea, onAdd }: Props) {
  const id = useId();
  const { materials } = scene.classroom;
  const shown = area === null ? materials : materials.filter((material) => areaKey(material) === area);
  const areas = [...new Set(materials.map(areaKey))];
  return (
    <div className="table-head">
      <h2>{area === null ? 'All materials' : areaTitle(area)}</h2>
      <span className="aside">
        {shown.length} {shown.length === 1 ? 'material' : 'materials'} · {sayCounts(scene, shown)}
      </span>
      <span className="table-add">
        <MayChange>
          <TextLink onPress={() => onAdd('catalogue')}>Add from the catalogue</TextLink>
          <TextLink onPress={() => onAdd('own')}>Add your own</TextLink>
        </MayChange>
      </span>
      <div className="table-find">
        <label htmlFor={`${id}-area`}>Area</label>
        <select
          id={`${id}-area`}
          className="plain-input"
          value={area ?? ''}
          onChange={(event) => onArea(event.target.value === '' ? null : event.target.value)}
        >
          <option value="">all</option>
          {areas.map((key) => (
            <option key={key} value={key}>
              {areaTitle(key)}
            </option>
          ))}
        </select>
        <label htmlFor={id}>Find</label>
        <input
          id={id}
          type="search"
          className="plain-input"
          placeholder="name, step or shelf"
          value={typed}
          onChange={(event) => onTyped(event.target.value)}
        />
        <fieldset className="table-order">
          <legend>In order of</legend>
          {orders.map((each) => (
            <button key={each} type="button" aria-pressed={order === each} onClick={() => onOrder(each)}>
              {each}
            </button>
          ))}
        </fieldset>
      </div>
    </div>
  );
}
