import { placeOf } from '#model/analysis/moveDay/trayChanges.ts';
import type { Scene } from '#model/scene/types.ts';
import { boardName } from '../front/boardNames.ts';
import { sayCount } from '../text/sayCount.ts';
import { capital } from '../text/sayList.ts';
import type { Day } from './dayOf.ts';

/** Trays that stand elsewhere afterwards, in words. */
export function TrayChangeList({ day }: { readonly day: Day }) {
  const { plan } = day;
  const { trays, from } = plan;
  if (trays.length === 0) return null;
  return (
    <section className="tray-changes" aria-labelledby="tray-changes-head">
      <h3 id="tray-changes-head">
        {capital(sayCount(trays.length, 'tray'))} {trays.length === 1 ? 'changes' : 'change'} place
      </h3>
      <ul>
        {trays.map(({ material, kind }) => (
          <li key={material}>
            <b>{from.materialById.get(material)?.name ?? material}</b>: {sayChange(day, material, kind)}
          </li>
        ))}
      </ul>
    </section>
  );
}

function sayChange(day: Day, material: string, kind: Day['plan']['trays'][number]['kind']): string {
  const { plan } = day;
  const to = sayPlace(day, plan.to, material, plan.earlierId);
  switch (kind) {
    case 'to-table':
      return `from ${sayPlace(day, plan.from, material, (id) => id)} to the table`;
    case 'from-table':
      return `from the table to ${to}`;
    case 'order':
      return `another place in the row, ${to}`;
    default:
      return `from ${sayPlace(day, plan.from, material, (id) => id)} to ${to}`;
  }
}

function sayPlace({ names }: Day, scene: Scene, material: string, idOf: (piece: string) => string): string {
  const tray = scene.stands.get(material);
  const place = placeOf(tray, idOf);
  if (!place) return 'the table';
  const side = scene.sides.find(({ boards }) => tray?.board && boards.includes(tray.board));
  const index = side && tray?.board ? side.boards.indexOf(tray.board) : -1;
  return side && index >= 0 ? `${names.name(place.piece)}, ${boardName(index, side.boards.length).toLowerCase()}` : names.name(place.piece);
}
