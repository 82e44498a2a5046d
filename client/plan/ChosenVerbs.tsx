import { useLayout } from '../frame/useLayout.ts';
import { useSession, useUnits } from '../session/hooks.ts';
import { Button } from '../ui/Button.tsx';
import { TextLink } from '../ui/TextLink.tsx';
import { VerbMenu } from '../ui/VerbMenu.tsx';
import type { Item } from './items.ts';
import { openFront } from './keys.ts';
import { planStoreOf } from './planStore.ts';
import { copyChosen, mirrorChosen } from './set/chosenVerbs.ts';
import { saySlideStep, slidesIn } from './slides.ts';
import { usePlanState } from './usePlanState.ts';
import { putAway, slideBy, toggleLock, toTheWall, turnBy } from './verbs.ts';

interface Props {
  readonly item: Item;
  readonly isLocked: boolean;
}

export function SlideVerbs({ item, isLocked }: Props) {
  const session = useSession();
  const units = useUnits();
  return (
    <div className="chosen-slides">
      <span className="aside" aria-hidden="true">
        slide {saySlideStep(units)}
      </span>
      {slidesIn(units).map(({ name, sign, by }) => (
        <Button key={name} aria-label={name} isDisabled={isLocked} onPress={() => slideBy(session, item, by)}>
          <span aria-hidden="true">{sign}</span>
        </Button>
      ))}
    </div>
  );
}

/** Of who may only look. */
export function LookVerbs({ item }: { item: Item }) {
  const session = useSession();
  const isShelf = session.arrangement().pieces.some((p) => p.id === item.id && p.kind === 'shelf');
  if (!isShelf) return null;
  return (
    <div className="chosen-verbs">
      <Button onPress={() => openFront(session, item.id)}>See its front</Button>
    </div>
  );
}

interface VerbOf {
  readonly id: string;
  readonly text: string;
  readonly key?: string;
  readonly run: () => void;
  readonly isOff?: boolean;
}

/** As words on a wide screen; as buttons on tablets and phones, the rarer ones behind "More". */
export function ChosenVerbs({ item, isLocked }: Props) {
  const layout = useLayout();
  const all = useVerbsOf(item, isLocked);
  const { hasLetterKeys } = usePlanState('hasLetterKeys');
  if (layout === 'wide')
    return (
      <div className="chosen-verbs">
        {[...all.often, ...all.seldom].map((verb) => (
          <TextLink key={verb.id} isDisabled={verb.isOff ?? false} onPress={verb.run}>
            {verb.text}
            {hasLetterKeys && verb.key && <kbd> {verb.key}</kbd>}
          </TextLink>
        ))}
      </div>
    );
  return (
    <div className="chosen-verbs">
      {all.often.map((verb) => (
        <Button key={verb.id} isDisabled={verb.isOff ?? false} onPress={verb.run}>
          {verb.text}
        </Button>
      ))}
      <VerbMenu label="More" items={all.seldom} />
    </div>
  );
}

function useVerbsOf(item: Item, isLocked: boolean): { often: VerbOf[]; seldom: VerbOf[] } {
  const session = useSession();
  const layout = useLayout();
  const piece = item.kind === 'piece' ? session.arrangement().pieces.find((p) => p.id === item.id) : undefined;
  const isThing = item.kind === 'piece' || item.kind === 'fixture';
  const when = (isShown: boolean, verb: VerbOf): VerbOf[] => (isShown ? [verb] : []);
  const quarter: VerbOf = { id: 'quarter', text: 'Turn 90°', isOff: isLocked, run: () => turnBy(session, item, 90) };
  return {
    often: [
      ...when(isThing, { id: 'turn', text: 'Turn 15°', key: ']', isOff: isLocked, run: () => turnBy(session, item, 15) }),
      ...when(isThing && layout !== 'tablet', quarter),
      ...when(isThing, { id: 'wall', text: 'To the wall', isOff: isLocked, run: () => toTheWall(session, item) }),
      // On a wide sheet the front is always there.
      ...when(piece?.kind === 'shelf' && layout !== 'wide', { id: 'front', text: 'See its front', run: () => openFront(session, item.id) }),
      ...when(item.kind !== 'wall', { id: 'away', text: 'Put away', key: 'Del', run: () => putAway(session, item) }),
    ],
    seldom: [
      ...when(isThing && layout === 'tablet', quarter),
      ...when(isThing, { id: 'again', text: 'Another like it', key: 'G', run: () => copyChosen(session, [item]) }),
      ...when(isThing, { id: 'mirror', text: 'Mirror', key: 'M', isOff: isLocked, run: () => mirrorChosen(session, [item]) }),
      ...(piece ? [{ id: 'lock', text: isLocked ? 'Unlock' : 'Lock', key: 'L', run: () => toggleLock(session, piece) }] : []),
      ...when(layout === 'tablet', {
        id: 'figures',
        text: 'Figures',
        run: () => planStoreOf(session).set({ hasFigures: true }),
      }),
    ],
  };
}
