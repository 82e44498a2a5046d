import { Suspense, useEffect, useRef } from 'react';
import type { Piece } from '#model/schema/types.ts';
import { useLayout } from '../frame/useLayout.ts';
import { useArrangement, useClassroom, useMayChange, useSession } from '../session/hooks.ts';
import { fetchWhenQuiet } from '../session/whenQuiet.ts';
import { AreaBadge } from '../ui/AreaBadge.tsx';
import { late } from '../ui/late.tsx';
import { TextLink } from '../ui/TextLink.tsx';
import { areasOfShelves } from './areas.ts';
import { ChosenVerbs, LookVerbs, SlideVerbs } from './ChosenVerbs.tsx';
import { nameOfItem } from './describe.ts';
import { type Item, itemOfChosen } from './items.ts';
import { planStoreOf } from './planStore.ts';
import { LateSetStrip } from './set/LateSetStrip.tsx';
import { isLocked, thingOf } from './things.ts';
import { useChosen } from './useChosen.ts';
import { useChosenItems } from './useChosenItems.ts';
import { usePlanState } from './usePlanState.ts';

const loadFields = () => import('./ChosenFields.tsx');
const ChosenFields = late(() => loadFields().then((m) => m.ChosenFields));
fetchWhenQuiet(loadFields);

/**
 * The verbs of the chosen thing; anything by dragging is also here by buttons and typed figures.
 * It keeps its height when nothing is chosen: a plan that grows under the pointer cannot be dragged on.
 */
export function ChosenStrip() {
  const session = useSession();
  const chosen = useChosen();
  // Names, numbers and fields follow what these say.
  useClassroom();
  useArrangement();
  const items = useChosenItems();
  const item = itemOfChosen(chosen);
  const mayChange = useMayChange();
  if (items.length > 1) return <LateSetStrip items={items} />;
  const isThing = item?.kind === 'piece' || item?.kind === 'fixture';
  const thing = item ? thingOf(session, item) : undefined;
  if (chosen?.kind === 'tray') return <p className="chosen-strip aside">A tray is chosen; its verbs stand with the trays.</p>;
  if (!item || (isThing && !thing)) return <p className="chosen-strip aside">Press a thing to choose it; its verbs stand here.</p>;
  return (
    <fieldset className="chosen-strip" aria-label={`Verbs of ${nameOfItem(session, item)}`}>
      <Title item={item} piece={item.kind === 'piece' ? (thing as Piece) : null} />
      {mayChange ? <ChangeVerbs item={item} isLocked={thing !== undefined && isLocked(thing)} /> : <LookVerbs item={item} />}
    </fieldset>
  );
}

/** Verbs, and the figures in line where there is height for them; on a tablet in the place of the verbs, when asked for: over the drawing they would cover it. */
function ChangeVerbs({ item, isLocked }: { item: Item; isLocked: boolean }) {
  const session = useSession();
  const isTablet = useLayout() === 'tablet';
  const { hasFigures } = usePlanState('hasFigures');
  const figures = (
    <div className="figures">
      <Suspense fallback={null}>
        <ChosenFields key={`${item.kind}/${item.id}`} item={item} isLocked={isLocked} />
      </Suspense>
    </div>
  );
  if (isTablet && hasFigures)
    return (
      <>
        {figures}
        <ToVerbs onPress={() => planStoreOf(session).set({ hasFigures: false })} />
      </>
    );
  return (
    <>
      <SlideVerbs item={item} isLocked={isLocked} />
      <ChosenVerbs item={item} isLocked={isLocked} />
      {!isTablet && figures}
    </>
  );
}

/** Has the keys that the menu leaves to nobody when it goes away with the verbs. */
function ToVerbs({ onPress }: { onPress: () => void }) {
  const place = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const later = setTimeout(() => document.activeElement === document.body && place.current?.querySelector('button')?.focus(), 80);
    return () => clearTimeout(later);
  }, []);
  return (
    <div ref={place}>
      <TextLink onPress={onPress}>Verbs</TextLink>
    </div>
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
