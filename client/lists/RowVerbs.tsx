import { sayLength } from '#model/units/sayLength.ts';
import type { Item } from '../plan/items.ts';
import { openFront } from '../plan/keys.ts';
import { copyChosen, mirrorChosen } from '../plan/set/chosenVerbs.ts';
import { putAway, slideBy, toggleLock, toTheWall, turnBy } from '../plan/verbs.ts';
import { useMayChange, useSession, useUnits } from '../session/hooks.ts';
import { TextLink } from '../ui/TextLink.tsx';

const STEP = 50;
const ways = [
  ['west', { x: -STEP, y: 0 }],
  ['north', { x: 0, y: -STEP }],
  ['south', { x: 0, y: STEP }],
  ['east', { x: STEP, y: 0 }],
] as const;

/** What can be done with the chosen line: the plan's verbs, in words. */
export function RowVerbs({ item, name, isLocked }: { item: Item; name: string; isLocked: boolean }) {
  const session = useSession();
  const units = useUnits();
  const isThing = item.kind === 'piece' || item.kind === 'fixture';
  const piece = item.kind === 'piece' ? session.arrangement().pieces.find((p) => p.id === item.id) : undefined;
  const mayChange = useMayChange();
  if (!mayChange)
    return piece?.kind === 'shelf' ? (
      <fieldset className="verbs" aria-label={`Verbs of ${name}`}>
        <TextLink onPress={() => openFront(session, item.id)}>See its front</TextLink>
      </fieldset>
    ) : null;
  return (
    <fieldset className="verbs" aria-label={`Verbs of ${name}`}>
      <span className="aside">slide {sayLength(STEP, units)}</span>
      {ways.map(([way, by]) => (
        <TextLink key={way} isDisabled={isLocked} onPress={() => slideBy(session, item, by)}>
          {way}
        </TextLink>
      ))}
      {isThing && (
        <>
          <TextLink isDisabled={isLocked} onPress={() => turnBy(session, item, 15)}>
            Turn 15°
          </TextLink>
          <TextLink isDisabled={isLocked} onPress={() => turnBy(session, item, 90)}>
            Turn 90°
          </TextLink>
          <TextLink isDisabled={isLocked} onPress={() => toTheWall(session, item)}>
            To the wall
          </TextLink>
        </>
      )}
      {piece?.kind === 'shelf' && <TextLink onPress={() => openFront(session, item.id)}>See its front</TextLink>}
      {isThing && (
        <>
          <TextLink onPress={() => copyChosen(session, [item])}>Another like it</TextLink>
          <TextLink isDisabled={isLocked} onPress={() => mirrorChosen(session, [item])}>
            Mirror
          </TextLink>
        </>
      )}
      {piece && <TextLink onPress={() => toggleLock(session, piece)}>{isLocked ? 'Unlock' : 'Lock'}</TextLink>}
      {item.kind !== 'wall' && <TextLink onPress={() => putAway(session, item)}>Put away</TextLink>}
    </fieldset>
  );
}
