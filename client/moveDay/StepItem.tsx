import { useId } from 'react';
import { useMayChange } from '../session/hooks.ts';
import { sayList } from '../text/sayList.ts';
import { Button } from '../ui/Button.tsx';
import { TextField } from '../ui/TextField.tsx';
import { TextLink } from '../ui/TextLink.tsx';
import type { Day, DayStep } from './dayOf.ts';
import { sayEarly } from './sayEarly.ts';
import { nameOfAny, type Saying, sayCaution, sayStep, sayWaits } from './sayStep.ts';
import { sayWaiters } from './sayWaiters.ts';
import type { StepActions } from './stepActions.ts';

interface Props {
  readonly one: DayStep;
  readonly day: Day;
  readonly saying: Saying;
  readonly actions: StepActions;
  readonly isChosen: boolean;
  readonly onChoose: (isChosen: boolean) => void;
}

/** One step: its box to tick, what to do, and what it waits for. Opened it says what to mind and has its verbs. */
export function StepItem({ one, day, saying, actions, isChosen, onChoose }: Props) {
  const { step, number, state } = one;
  const { title, detail, mind } = sayStep(step, saying);
  const more = useId();
  const mayChange = useMayChange();
  const isDone = state.state === 'done';
  const classes = ['step', state.state, isChosen ? 'chosen' : ''].filter(Boolean).join(' ');
  return (
    <li className={classes}>
      <label className="step-tick">
        <input
          type="checkbox"
          checked={isDone}
          disabled={!mayChange}
          aria-label={`Step ${number} done: ${title}`}
          onChange={(event) => actions.mark(step.id, event.target.checked ? 'done' : 'open')}
        />
      </label>
      <span className="step-number" aria-hidden="true">
        {number}
      </span>
      <div className="step-words">
        <button type="button" className="step-title" aria-expanded={isChosen} aria-controls={more} onClick={() => onChoose(!isChosen)}>
          <span className="only-heard">Step {number}: </span>
          {title}
        </button>
        <p className="step-detail">{detail}</p>
        {!isChosen && !isDone && sayCaution(step) !== '' && <p className="step-detail">{sayCaution(step)}.</p>}
        <Warnings one={one} day={day} saying={saying} />
        <div id={more}>
          {isChosen && (
            <>
              {mind.length > 0 && (
                <ul className="step-mind">
                  {mind.map((text) => (
                    <li key={text}>{text}</li>
                  ))}
                </ul>
              )}
              {mayChange && <Verbs one={one} day={day} actions={actions} onDone={() => onChoose(false)} />}
            </>
          )}
        </div>
      </div>
      <div className="step-beside">
        <span className="aside">{sayWhen(one, day)}</span>
        {state.state !== 'open' && (
          <span>
            <abbr className={`initials ${state.state === 'doing' ? 'dashed' : ''}`} title={sayWho(one)}>
              {state.by || '–'}
            </abbr>
          </span>
        )}
      </div>
    </li>
  );
}

const whoWords = { open: '', doing: 'does it', done: 'did it', cannot: 'said that it cannot be done' } as const;
const sayWho = ({ state }: DayStep): string => `${state.by || 'somebody'} ${whoWords[state.state]}`;

function sayWhen({ step, number, after }: DayStep, { steps }: Day): string {
  if (after.length === 0) return number === 1 ? 'first' : 'any time';
  if (step.does === 'tape' && number === steps.length) return 'last';
  return after.length > 3 ? `after ${after.at(-1)} and ${after.length - 1} more` : sayWaits(after);
}

/** What holds it up, and what does not work where it stands in the list. */
function Warnings({ one, day, saying }: Pick<Props, 'one' | 'day' | 'saying'>) {
  const { step, state, heldBy, trouble } = one;
  const { plan, names } = saying;
  const words: string[] = [];
  if (state.state === 'cannot') {
    words.push(`Cannot be done${state.why ? `: ${state.why}` : ''}. ${sayWaiters(day, step.id)}`);
  }
  if (heldBy.length > 0 && state.state !== 'done')
    words.push(`Waits for ${heldBy.length === 1 ? 'step' : 'steps'} ${sayList(heldBy.map(String))}, which cannot be done.`);
  const early = state.state === 'done' ? sayEarly(day, one) : null;
  if (early !== null) words.push(early);
  if (trouble && trouble.inTheWay.length > 0)
    words.push(
      `Does not work here: ${sayList(trouble.inTheWay.map((id) => nameOfAny(id, plan, names)))} still ${trouble.inTheWay.length === 1 ? 'stands' : 'stand'} there.`,
    );
  else if (trouble) {
    const later = [...new Set(trouble.later.map((wait) => day.steps.find((other) => other.step.id === wait.step)?.number ?? 0))].sort(
      (p, q) => p - q,
    );
    words.push(
      `Does not work here: it waits for ${later.length === 1 ? 'step' : 'steps'} ${sayList(later.map(String))}, which ${later.length === 1 ? 'comes' : 'come'} later.`,
    );
  }
  if (step.overlaps.length > 0)
    words.push(`Its place is taken in the arrangement itself, by ${sayList(step.overlaps.map((id) => nameOfAny(id, plan, names)))}.`);
  if (step.does === 'aside' && !step.stands && plan.units[step.unit ?? -1]?.isRug !== true)
    words.push('No floor in the room is free for it.');
  return words.map((text) => (
    <p key={text} className="step-warning">
      {text}
    </p>
  ));
}

function Verbs({ one, day, actions, onDone }: Pick<Props, 'one' | 'day' | 'actions'> & { readonly onDone: () => void }) {
  const { step, number, state } = one;
  const isCannot = state.state === 'cannot';
  return (
    <>
      <div className="verbs step-verbs">
        {state.state === 'done' ? (
          <Button onPress={() => actions.mark(step.id, 'open')}>Not done yet</Button>
        ) : (
          <Button
            kind="strong"
            onPress={() => {
              actions.mark(step.id, 'done');
              onDone();
            }}
          >
            Done
          </Button>
        )}
        {state.state === 'open' && <TextLink onPress={() => actions.mark(step.id, 'doing')}>I do it</TextLink>}
        {state.state === 'doing' && <TextLink onPress={() => actions.mark(step.id, 'open')}>Let it go</TextLink>}
        {isCannot ? (
          <TextLink onPress={() => actions.mark(step.id, 'open')}>It can be done</TextLink>
        ) : (
          state.state !== 'done' && <TextLink onPress={() => actions.mark(step.id, 'cannot')}>Cannot be done</TextLink>
        )}
        <TextLink isDisabled={number === 1} onPress={() => actions.shift(step.id, -1)}>
          Earlier
        </TextLink>
        <TextLink isDisabled={number === day.steps.length} onPress={() => actions.shift(step.id, 1)}>
          Later
        </TextLink>
      </div>
      {isCannot && <TextField label="Why it cannot be done" value={state.why} onCommit={(why) => actions.mark(step.id, 'cannot', why)} />}
    </>
  );
}
