import { useMemo, useState } from 'react';
import type { Scene } from '#model/scene/types.ts';
import type { Material } from '#model/schema/types.ts';
import { sayLength } from '#model/units/sayLength.ts';
import { frontActions } from '../../front/frontActions.ts';
import { sayStep } from '../../front/frontLayout.ts';
import { capital } from '../../front/shelfNames.ts';
import { useSession, useUnits } from '../../session/hooks.ts';
import { Button } from '../../ui/Button.tsx';
import { TextLink } from '../../ui/TextLink.tsx';
import { type FitPlace, fitPlaces } from './fitPlaces.ts';
import { GapDrawing } from './GapDrawing.tsx';

const SHOWN = 3;

/** Where a material would fit: the best places first, each with its gap drawn to scale. */
export function FitList({ scene, material }: { scene: Scene; material: Material }) {
  const session = useSession();
  const [isAll, setAll] = useState(false);
  const places = useMemo(() => fitPlaces(scene, material), [scene, material]);
  const actions = useMemo(() => frontActions(session), [session]);
  if (material.width === null) return <p className="aside">Give its width, then the boards are searched.</p>;
  if (places.length === 0) return <p className="aside">No children's shelf has a board yet.</p>;
  const shown = isAll ? places : places.slice(0, SHOWN);
  const best = places[0]?.places ? places[0] : null;

  function put(place: FitPlace): void {
    if (place.places) actions.stand(place.layout, place.board, material.id, place.places);
  }
  function show(place: FitPlace): void {
    session.setView({
      sheet: 'room',
      frontOf: { piece: place.side.piece.id, side: place.side.side },
      chosen: { kind: 'piece', id: place.side.piece.id },
      material: material.id,
    });
  }

  return (
    <>
      <ul className="fit-list">
        {shown.map((place) => (
          <li key={`${place.side.piece.id}/${place.side.side}/${place.board.key}`} data-best={place === best || undefined}>
            <Fit {...{ place, material }} isBest={place === best} onPut={() => put(place)} onShow={() => show(place)} />
          </li>
        ))}
      </ul>
      {places.length > SHOWN && (
        <TextLink onPress={() => setAll(!isAll)}>{isAll ? 'Only the best' : `All ${places.length} boards`}</TextLink>
      )}
    </>
  );
}

interface FitProps {
  readonly place: FitPlace;
  readonly material: Material;
  readonly isBest: boolean;
  readonly onPut: () => void;
  readonly onShow: () => void;
}

function Fit({ place, material, isBest, onPut, onShow }: FitProps) {
  const units = useUnits();
  const title = `${capital(place.where)}, ${place.board.name.toLowerCase()} board${place.ordinal === null ? '' : `, ${place.ordinal} place`}`;
  const canPut = place.places !== null;
  return (
    <>
      <p className="fit-head">
        <b>{title}</b> <span className="aside">{isBest ? 'best' : place.word}</span>
      </p>
      <div className="fit-gap">
        <GapDrawing width={material.width ?? 0} free={place.free} label={sayStep(material.step)} fits={canPut} />
        <span>{sayLength(place.free, units)} free</span>
      </div>
      <p>{place.why}</p>
      <div className="verbs">
        {canPut && isBest && (
          <Button kind="strong" onPress={onPut}>
            Put it here
          </Button>
        )}
        {canPut && !isBest && (
          <TextLink onPress={onPut}>
            {place.slides > 0 ? 'Make room and put it here' : 'Put it here'}
            <span className="only-heard">: {title}</span>
          </TextLink>
        )}
        <TextLink onPress={onShow}>
          Show on the plan<span className="only-heard">: {title}</span>
        </TextLink>
      </div>
    </>
  );
}
