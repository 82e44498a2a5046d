import { useEffect, useRef, useState } from 'react';
import { sayLength } from '#model/units/sayLength.ts';
import { useLayout } from '../../frame/useLayout.ts';
import { useMayChange, useSession, useUnits } from '../../session/hooks.ts';
import { Button } from '../../ui/Button.tsx';
import { LengthField } from '../../ui/LengthField.tsx';
import { TextLink } from '../../ui/TextLink.tsx';
import { VerbMenu } from '../../ui/VerbMenu.tsx';
import { lower, nameOfItem } from '../describe.ts';
import type { Item } from '../items.ts';
import { slidesIn } from '../slides.ts';
import { thingOf } from '../things.ts';
import { usePlanState } from '../usePlanState.ts';
import { choose } from '../verbs.ts';
import { averageGap } from './arrange.ts';
import { areLocked } from './chosenSet.ts';
import { putAwayChosen, rowChosen, setVerbs, slideChosen, turnChosen } from './chosenVerbs.ts';

/** What can be done with several things at once, in words. */
export function SetStrip({ items }: { items: readonly Item[] }) {
  const session = useSession();
  const mayChange = useMayChange();
  const units = useUnits();
  const names = items.map((item, i) => (i === 0 ? nameOfItem(session, item) : lower(nameOfItem(session, item))));
  return (
    <fieldset className="chosen-strip" aria-label={`Verbs of ${items.length} things`}>
      <div className="chosen-title" title={names.join(', ')}>
        <h3>{items.length} things</h3>
      </div>
      {mayChange && (
        <div className="chosen-slides">
          {slidesIn(units).map(({ name, sign, by }) => (
            <Button key={name} aria-label={name} onPress={() => slideChosen(session, items, by)}>
              <span aria-hidden="true">{sign}</span>
            </Button>
          ))}
        </div>
      )}
      {mayChange && <SetVerbs items={items} />}
    </fieldset>
  );
}

/** mm: stands in the field until another is typed */
const USUAL_GAP = 300;

/** How far apart the things of a row are to stand. */
function RowMenu({ items, onType }: { items: readonly Item[]; onType: () => void }) {
  const session = useSession();
  const units = useUnits();
  const gap = averageGap(items.flatMap((item) => thingOf(session, item) ?? []));
  const own =
    gap === null
      ? []
      : [
          {
            id: 'own',
            text: `With the gap they have on average, ${sayLength(gap, units)}`,
            run: () => void rowChosen(session, items, gap),
          },
        ];
  return (
    <VerbMenu
      label="In a row"
      items={[
        { id: 'touching', text: 'Touching each other', run: () => void rowChosen(session, items, 0) },
        ...own,
        { id: 'typed', text: 'With a gap that you type', run: onType },
      ]}
    />
  );
}

/** Asks for the gap of a row, in the place of the verbs. */
function RowGap({ items, onDone }: { items: readonly Item[]; onDone: () => void }) {
  const session = useSession();
  const units = useUnits();
  const [gap, setGap] = useState(USUAL_GAP);
  const place = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const begin = (): void => place.current?.querySelector('input')?.select();
    begin();
    // A menu that closes takes the focus back a moment later.
    const later = setTimeout(() => !place.current?.contains(document.activeElement) && begin(), 80);
    return () => clearTimeout(later);
  }, []);
  const put = (mm: number) => {
    rowChosen(session, items, mm);
    onDone();
  };
  return (
    <div ref={place} className="chosen-verbs row-gap">
      <LengthField
        label="In a row with a gap of"
        value={gap}
        units={units}
        least={0}
        onCommit={(mm) => mm !== null && setGap(mm)}
        onTyping={(mm) => mm !== null && setGap(mm)}
        onEnter={(mm) => mm !== null && put(mm)}
      />
      <Button onPress={() => put(gap)}>Put in a row</Button>
      <TextLink onPress={onDone}>Leave off</TextLink>
    </div>
  );
}

interface VerbOfSet {
  readonly id: string;
  readonly text: string;
  readonly key: string;
  readonly run: () => void;
  readonly isOff?: boolean;
}

function useVerbsOfSet(items: readonly Item[]): VerbOfSet[] {
  const session = useSession();
  const isAllLocked = areLocked(session, items);
  const hasPieces = items.some(({ kind }) => kind === 'piece');
  const more = setVerbs.map(({ id, name, letter, least, run }): VerbOfSet => {
    const text = id === 'lock' && isAllLocked ? 'Unlock' : name;
    return { id, text, key: letter, run: () => run(session, items), isOff: items.length < least || (id === 'lock' && !hasPieces) };
  });
  return [
    { id: 'turn', text: 'Turn 15°', key: ']', run: () => turnChosen(session, items, 15) },
    ...more,
    { id: 'away', text: 'Put away', key: 'Del', run: () => putAwayChosen(session, items) },
    { id: 'none', text: 'Let go', key: 'Esc', run: () => choose(session, null) },
  ];
}

/** On a tablet in one line of one height, so the rarer ones stand behind "More". */
export function SetVerbs({ items }: { items: readonly Item[] }) {
  const layout = useLayout();
  const { hasLetterKeys } = usePlanState('hasLetterKeys');
  const verbs = useVerbsOfSet(items);
  const [isTyping, setTyping] = useState(false);
  if (isTyping) return <RowGap items={items} onDone={() => setTyping(false)} />;
  const row = <RowMenu key="row" items={items} onType={() => setTyping(true)} />;
  const isRow = ({ id, isOff }: VerbOfSet): boolean => id === 'row' && !isOff;
  if (layout === 'wide')
    return (
      <div className="chosen-verbs">
        {verbs.map((verb) =>
          isRow(verb) ? (
            row
          ) : (
            <TextLink key={verb.id} isDisabled={verb.isOff ?? false} onPress={verb.run}>
              {verb.text}
              {hasLetterKeys && <kbd> {verb.key}</kbd>}
            </TextLink>
          ),
        )}
      </div>
    );
  const isOften = ({ id }: VerbOfSet): boolean => layout !== 'tablet' || ['turn', 'row', 'evenly', 'away'].includes(id);
  const seldom = verbs.filter((verb) => !isOften(verb)).map(({ id, text, run, isOff = false }) => ({ id, text, run, isOff }));
  return (
    <div className="chosen-verbs">
      {verbs.filter(isOften).map((verb) =>
        isRow(verb) ? (
          row
        ) : (
          <Button key={verb.id} isDisabled={verb.isOff ?? false} onPress={verb.run}>
            {verb.text}
          </Button>
        ),
      )}
      {seldom.length > 0 && <VerbMenu label="More" items={seldom} />}
    </div>
  );
}
