import { useMemo, useState } from 'react';
import type { FitOption } from '#model/measures/fit.ts';
import { standsOnFloor } from '#model/measures/standsOnFloor.ts';
import type { Scene } from '#model/scene/types.ts';
import type { Material } from '#model/schema/types.ts';
import { type LengthUnits, sayLength } from '#model/units/sayLength.ts';
import { bestInStep, bestOfBoards, fitOptions } from '../../front/fitOptions.ts';
import { bringIntoSight } from '../../front/frontFocus.ts';
import { sayStep } from '../../front/frontLayout.ts';
import { putOption } from '../../front/putOption.ts';
import { fitTitle, fitWhy, fitWord, sayNowhere } from '../../front/sayFit.ts';
import { useMayChange, useSession, useUnits } from '../../session/hooks.ts';
import { Button } from '../../ui/Button.tsx';
import { oneStop } from '../../ui/oneStop.ts';
import { TextLink } from '../../ui/TextLink.tsx';
import { GapDrawing } from './GapDrawing.tsx';

const SHOWN = 3;
/** mm: what a width that nobody measured is taken as */
const ASSUMED = 300;

/** Where a material would fit: the best gap of each board, drawn to scale, the best board first. */
export function FitList({ scene, material, isInStep }: { scene: Scene; material: Material; isInStep: boolean }) {
  const session = useSession();
  const units = useUnits();
  const [isAll, setAll] = useState(false);
  const options = useMemo(() => bestOfBoards(fitOptions(scene, material.id)), [scene, material.id]);
  if (standsOnFloor(material)) return <p>It stands on the floor, not on a board: draw it on the plan.</p>;
  if (options.length === 0) return <p className="aside">No children's shelf has a board yet.</p>;
  const nowhere = sayNowhere(scene, options, units);
  const shown = isAll ? options : nowhere || isInStep ? [] : options.slice(0, SHOWN);
  // What stands in its place, or would stand out of step, is not urged on anybody.
  const best = isInStep ? null : bestInStep(options);

  function show(option: FitOption): void {
    const piece = option.side.piece.id;
    session.setView({
      sheet: 'room',
      frontOf: { piece, side: option.side.side },
      chosen: { kind: 'piece', id: piece },
      material: material.id,
    });
    bringIntoSight('plan');
  }

  return (
    <>
      {material.width === null && <p className="aside">Its width is not known: {sayLength(ASSUMED, units)} is taken until you give it.</p>}
      {isInStep && <p>It stands in its place: nothing speaks for moving it.</p>}
      {nowhere && <p>{nowhere}</p>}
      <ul ref={oneStop} className="fit-list">
        {shown.map((option) => (
          <li key={keyOf(option)} data-best={option === best || undefined}>
            <Fit
              {...{ scene, option, material, units }}
              isBest={option === best}
              onPut={() => putOption(session, material.id, option)}
              onShow={() => show(option)}
            />
          </li>
        ))}
      </ul>
      {options.length > shown.length || isAll ? (
        <TextLink onPress={() => setAll(!isAll)}>{isAll ? 'Show fewer' : `All ${options.length} boards`}</TextLink>
      ) : null}
    </>
  );
}

const keyOf = ({ side, board }: FitOption): string => `${side.piece.id}/${side.side}/${board.level?.id ?? ''}`;

interface FitProps {
  readonly scene: Scene;
  readonly option: FitOption;
  readonly material: Material;
  readonly units: LengthUnits;
  readonly isBest: boolean;
  readonly onPut: () => void;
  readonly onShow: () => void;
}

function Fit({ scene, option, material, units, isBest, onPut, onShow }: FitProps) {
  const title = fitTitle(scene, option);
  const mayChange = useMayChange();
  const fits = option.fits !== 'no';
  const canPut = fits && mayChange;
  const free = Math.max(0, option.free);
  const isAcross = option.isTurned !== (scene.stands.get(material.id)?.placement.turned ?? false);
  const width = (isAcross ? material.depth : material.width) ?? ASSUMED;
  return (
    <>
      <p className="fit-head">
        <b>{title}</b>{' '}
        <span className="aside">{isBest ? (option.fits === 'pushed' ? 'best, with room made' : 'best') : fitWord(option)}</span>
      </p>
      <div className="fit-gap">
        <GapDrawing width={width} free={free} label={sayStep(material.step)} fits={fits} />
        <span>{sayLength(free, units)} free</span>
      </div>
      <p>{fitWhy(option, units)}</p>
      <div className="verbs">
        {canPut && isBest && (
          <Button kind="strong" onPress={onPut}>
            {option.fits === 'pushed' ? 'Make room and put it here' : 'Put it here'}
          </Button>
        )}
        {canPut && !isBest && (
          <TextLink onPress={onPut}>
            {option.fits === 'pushed' ? 'Make room and put it here' : 'Put it here'}
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
