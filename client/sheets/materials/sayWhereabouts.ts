import { sayOrdinal } from '#model/scene/boardWord.ts';
import type { Scene } from '#model/scene/types.ts';
import type { Material } from '#model/schema/types.ts';
import { sideName } from '../../front/shelfNames.ts';
import type { Whereabouts } from './whereabouts.ts';

const stateWords: Readonly<Record<Material['state'], string>> = {
  out: 'out',
  store: 'in store',
  mend: 'to mend',
  make: 'to make',
  wanted: 'wanted',
};
export const sayState = (state: Material['state']): string => stateWords[state];

/** "shelf 7, top · 1st", "on the table", "in store". */
export function sayWhereabouts(scene: Scene, material: Material, at: Whereabouts): string {
  switch (at.at) {
    case 'board':
      return `${sideName(scene, at.side)}, ${at.boardName.toLowerCase()} · ${sayOrdinal(at.place)}`;
    case 'room':
      return 'in the room';
    case 'table':
      return 'on the table';
    case 'floor':
      return 'on the floor';
    case 'away':
      return sayState(material.state);
    case 'none':
      return 'no tray of its own';
  }
}
