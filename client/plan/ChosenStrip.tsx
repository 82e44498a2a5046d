import type { Piece } from '#model/schema/types.ts';
import { useArrangement, useClassroom, useReport, useSession, useView } from '../session/hooks.ts';
import { AreaBadge } from '../ui/AreaBadge.tsx';
import { Button } from '../ui/Button.tsx';
import { areasOfShelves } from './areas.ts';
import { ChosenFields } from './ChosenFields.tsx';
import { nameOfItem } from './describe.ts';
import type { Item } from './items.ts';
import { openFront } from './keys.ts';
import { copyAgain, isLocked, putAway, slideBy, thingOf, toggleLock, toTheWall, turnBy } from './verbs.ts';

const STEP = 50;
const slides = [
  { name: 'Slide west 0.05 m', sign: '←', by: { x: -STEP, y: 0 } },
  { name: 'Slide north 0.05 m', sign: '↑', by: { x: 0, y: -STEP } },
  { name: 'Slide south 0.05 m', sign: '↓', by: { x: 0, y: STEP } },
  { name: 'Slide east 0.05 m', sign: '→', by: { x: STEP, y: 0 } },
] as const;

/** The verbs of the chosen thing; anything by dragging is also here by buttons and typed figures. */
export function ChosenStrip() {
  const session = useSession();
  const { chosen } = useView();
  // Names, numbers and fields follow what these say.
  useClassroom();
  useArrangement();
  useReport();
  if (!chosen || chosen.kind === 'tray') return null;
  const item: Item = chosen;
  const thing = thingOf(session, item);
  if ((item.kind === 'piece' || item.kind === 'fixture') && !thing) return null;
  const piece = item.kind === 'piece' ? (thing as Piece) : null;
  const locked = thing !== undefined && isLocked(thing);
  return (
    <fieldset className="chosen-strip" aria-label={`Verbs of ${nameOfItem(session, item)}`}>
      <Title item={item} piece={piece} />
      <div className="chosen-slides">
        <span className="aside" aria-hidden="true">
          slide 0.05 m
        </span>
        {slides.map(({ name, sign, by }) => (
          <Button key={name} aria-label={name} isDisabled={locked} onPress={() => slideBy(session, item, by)}>
            <span aria-hidden="true">{sign}</span>
          </Button>
        ))}
      </div>
      <div className="chosen-verbs">
        {thing && (
          <>
            <Button isDisabled={locked} onPress={() => turnBy(session, item, 15)}>
              Turn
            </Button>
            <Button isDisabled={locked} onPress={() => toTheWall(session, item)}>
              To the wall
            </Button>
          </>
        )}
        {piece?.kind === 'shelf' && <Button onPress={() => openFront(session, item.id)}>See its front</Button>}
        {thing && <Button onPress={() => copyAgain(session, item)}>Again</Button>}
        {piece && <Button onPress={() => toggleLock(session, piece)}>{locked ? 'Unlock' : 'Lock'}</Button>}
        {item.kind !== 'wall' && <Button onPress={() => putAway(session, item)}>Put away</Button>}
      </div>
      <ChosenFields key={`${item.kind}/${item.id}`} item={item} isLocked={locked} />
    </fieldset>
  );
}

function Title({ item, piece }: { item: Item; piece: Piece | null }) {
  const session = useSession();
  const area = piece && areasOfShelves(session.arrangement(), session.classroom().materials).get(piece.id);
  return (
    <div className="chosen-title">
      <h3>
        {nameOfItem(session, item)} {area && <AreaBadge area={area.area} strand={area.strand} />}
      </h3>
      {piece?.name && piece.name !== nameOfItem(session, item) && <span className="aside">{piece.name}</span>}
    </div>
  );
}
