import type { Scene } from '#model/scene/types.ts';
import { frontActions } from '../../front/frontActions.ts';
import type { Session } from '../../session/types.ts';
import { type FitPlace, fitPlaces } from './fitPlaces.ts';

export interface FitFinder {
  /** "shelf 7, low" where a material fits without moving others; null: nowhere; undefined: its size is not known. */
  sayBest(id: string): string | null | undefined;
  /** Puts a material on its best place. @returns false: nowhere, and it was said. */
  placeBest(session: Session, id: string): boolean;
}

/** Best places in one state of the room, looked up once per material. */
export function fitFinder(scene: Scene): FitFinder {
  const known = new Map<string, FitPlace | null | undefined>();
  const best = (id: string): FitPlace | null | undefined => {
    if (known.has(id)) return known.get(id);
    const material = scene.materialById.get(id);
    const found =
      material === undefined || material.width === null
        ? undefined
        : (fitPlaces(scene, material).find((place) => place.places !== null && place.slides === 0) ?? null);
    known.set(id, found);
    return found;
  };
  return {
    sayBest: (id) => {
      const place = best(id);
      return place ? `${place.where}, ${place.board.name.toLowerCase()}` : place;
    },
    placeBest: (session, id) => {
      const place = best(id);
      if (!place?.places) {
        session.announce('No board has a gap wide enough. Where room can be made is shown beside the table.');
        return false;
      }
      frontActions(session).stand(place.layout, place.board, id, place.places);
      return true;
    },
  };
}
