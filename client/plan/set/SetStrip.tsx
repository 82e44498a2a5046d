import { useLayout } from '../../frame/useLayout.ts';
import { useMayChange, useSession, useUnits } from '../../session/hooks.ts';
import { Button } from '../../ui/Button.tsx';
import { TextLink } from '../../ui/TextLink.tsx';
import { VerbMenu } from '../../ui/VerbMenu.tsx';
import { lower, nameOfItem } from '../describe.ts';
import type { Item } from '../items.ts';
import { slidesIn } from '../slides.ts';
import { usePlanState } from '../usePlanState.ts';
import { choose } from '../verbs.ts';
import { areLocked } from './chosenSet.ts';
import { putAwayChosen, setVerbs, slideChosen, turnChosen } from './chosenVerbs.ts';

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
    { id: 'turn', text: 'Turn', key: ']', run: () => turnChosen(session, items, 15) },
    ...more,
    { id: 'away', text: 'Put away', key: 'Del', run: () => putAwayChosen(session, items) },
    { id: 'none', text: 'Let go', key: 'Esc', run: () => choose(session, null) },
  ];
}

/** On a tablet in one line of one height, so the rarer ones stand behind "More". */
export function SetVerbs({ items }: { items: readonly Item[] }) {
  const layout = useLayout();
  const { hasLetterKeys } = usePlanState();
  const verbs = useVerbsOfSet(items);
  if (layout === 'wide')
    return (
      <div className="chosen-verbs">
        {verbs.map((verb) => (
          <TextLink key={verb.id} isDisabled={verb.isOff ?? false} onPress={verb.run}>
            {verb.text}
            {hasLetterKeys && <kbd> {verb.key}</kbd>}
          </TextLink>
        ))}
      </div>
    );
  const isOften = ({ id }: VerbOfSet): boolean => layout !== 'tablet' || ['turn', 'row', 'evenly', 'away'].includes(id);
  const seldom = verbs.filter((verb) => !isOften(verb)).map(({ id, text, run, isOff = false }) => ({ id, text, run, isOff }));
  return (
    <div className="chosen-verbs">
      {verbs.filter(isOften).map((verb) => (
        <Button key={verb.id} isDisabled={verb.isOff ?? false} onPress={verb.run}>
          {verb.text}
        </Button>
      ))}
      {seldom.length > 0 && <VerbMenu label="More" items={seldom} />}
    </div>
  );
}
