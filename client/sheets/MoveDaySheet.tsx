import { type ReactNode, Suspense, useEffect, useMemo, useState } from 'react';
import type { Arrangement } from '#model/schema/types.ts';
import { FootStrip } from '../frame/FootStrip.tsx';
import { SwapButton } from '../frame/SheetLayout.tsx';
import { TitleBlock } from '../frame/TitleBlock.tsx';
import { useLayout } from '../frame/useLayout.ts';
import { BeforeAfter } from '../moveDay/BeforeAfter.tsx';
import { CrateTable } from '../moveDay/CrateTable.tsx';
import { type Day, dayOf } from '../moveDay/dayOf.ts';
import { MovePicture } from '../moveDay/MovePicture.tsx';
import { OneArrangement } from '../moveDay/OneArrangement.tsx';
import { StepList } from '../moveDay/StepList.tsx';
import { useSteadyClassroom } from '../moveDay/steady.ts';
import { type StepActions, stepActions } from '../moveDay/stepActions.ts';
import { TrayChangeList } from '../moveDay/TrayChangeList.tsx';
import { type FiguresState, useFigures } from '../moveDay/useFigures.ts';
import { Wanted } from '../moveDay/Wanted.tsx';
import type { MatPlace } from '../plan/reportParts.ts';
import { useArrangement, useClassroom, useIsThinking, useSession, useUnits } from '../session/hooks.ts';
import { MayChange } from '../session/MayChange.tsx';
import { Button } from '../ui/Button.tsx';
import { ScrollPart } from '../ui/ScrollPart.tsx';
import { TextLink } from '../ui/TextLink.tsx';
import '../styles/moveDay.css';
import { pairOf } from '../moveDay/pairOf.ts';
import { nameOfArrangement } from '../text/nameOfArrangement.ts';
import { late } from '../ui/late.tsx';

const CrateLabels = late(() => import('../moveDay/CrateLabels.tsx').then((m) => m.CrateLabels));

/** The day of the move: what goes where, in which order. */
export function MoveDaySheet() {
  const classroom = useClassroom();
  const shown = useArrangement();
  const pair = pairOf(classroom, shown);
  if (!pair) return <Frame parts={[{ id: 'order', name: 'Move day', content: <OneArrangement /> }]} plan={null} />;
  return <MoveFromTo {...pair} />;
}

function MoveFromTo({ from, to }: { readonly from: Arrangement; readonly to: Arrangement }) {
  const session = useSession();
  const now = useClassroom();
  const classroom = useSteadyClassroom(now);
  const units = useUnits();
  const figures = useFigures(classroom, from.id, to.id, !useIsThinking());
  const [chosen, setChosen] = useState<string | null>(null);
  const [hasLabels, setLabels] = useState(false);
  const isWide = useLayout() === 'wide';
  const day = useMemo(() => dayOf(classroom, from, to, now.moveDay), [classroom, from, to, now.moveDay]);
  const actions = useMemo(() => stepActions(session, day, from.id, to.id), [session, day, from.id, to.id]);
  const after = figures.of.find(({ arrangement }) => arrangement === to.id);
  const mats = useMemo((): readonly MatPlace[] => (after?.mats?.places ?? []).map((place, i) => ({ ...place, number: i + 1 })), [after]);
  const saying = { plan: day.plan, names: day.names, units, mats: after?.mats?.count ?? null };
  useEffect(() => {
    if (chosen !== null && !day.steps.some(({ step }) => step.id === chosen)) setChosen(null);
  }, [chosen, day]);

  const heading = `From “${nameOfArrangement(from)}” to “${nameOfArrangement(to)}”`;
  if (day.steps.length === 0)
    return <Frame plan={null} parts={[{ id: 'order', name: 'Order', content: <NothingToMove from={from} to={to} heading={heading} /> }]} />;

  const order = <StepList day={day} saying={saying} actions={actions} chosen={chosen} onChoose={setChosen} />;
  const crates = (
    <>
      <header className="panel-head">
        <h2>What goes where</h2>
        {day.plan.packed.crates.length > 0 && <TextLink onPress={() => setLabels(true)}>Crate labels</TextLink>}
      </header>
      <CrateTable day={day} />
      <TrayChangeList day={day} />
      {!isWide && <Wanted day={day} actions={actions} />}
    </>
  );
  return (
    <>
      <Frame
        parts={[
          { id: 'order', name: 'Order', content: order, foot: <Finished day={day} to={to} /> },
          { id: 'crates', name: 'Crates', content: crates },
        ]}
        plan={
          <PlanPart
            day={day}
            heading={heading}
            figures={figures}
            mats={mats}
            from={from}
            to={to}
            chosen={chosen}
            onChoose={setChosen}
            actions={actions}
          />
        }
      />
      <Suspense fallback={null}>{hasLabels && <CrateLabels day={day} onClose={() => setLabels(false)} />}</Suspense>
    </>
  );
}

interface PlanProps {
  readonly day: Day;
  readonly heading: string;
  readonly figures: FiguresState;
  readonly mats: readonly MatPlace[];
  readonly from: Arrangement;
  readonly to: Arrangement;
  readonly chosen: string | null;
  readonly onChoose: (step: string | null) => void;
  readonly actions: StepActions;
}

function PlanPart({ day, heading, figures, mats, from, to, chosen, onChoose, actions }: PlanProps) {
  const isWide = useLayout() === 'wide';
  const units = useUnits();
  return (
    <>
      <header className="panel-head move-head">
        <h2>{heading}</h2>
        <Others from={from} to={to} />
      </header>
      <MovePicture day={day} mats={mats} chosen={chosen} onChoose={onChoose} label={`Plan. ${heading}. The steps are listed in words.`} />
      <p className="move-key aside">
        <span className="key-now" aria-hidden="true" /> stands here now <span className="key-after" aria-hidden="true" /> stands here after{' '}
        <span className="key-arrow" aria-hidden="true">
          →
        </span>{' '}
        how far, in {units === 'imperial' ? 'feet and inches' : 'metres'}
      </p>
      <div className="move-foot">
        <BeforeAfter figures={figures} from={from.id} to={to.id} />
        {isWide && <Wanted day={day} actions={actions} />}
      </div>
    </>
  );
}

/** With more than two arrangements: which one the room is moved to. */
function Others({ from, to }: { readonly from: Arrangement; readonly to: Arrangement }) {
  const session = useSession();
  const { arrangements } = useClassroom();
  const others = arrangements.filter(({ id }) => id !== from.id && id !== to.id);
  if (others.length === 0) return null;
  return (
    <span className="aside">
      or to{' '}
      {others.map((other) => (
        <TextLink key={other.id} onPress={() => session.setView({ arrangement: other.id, chosen: null, finding: null, preview: null })}>
          {nameOfArrangement(other)}
        </TextLink>
      ))}
    </span>
  );
}

function NothingToMove({ from, to, heading }: { readonly from: Arrangement; readonly to: Arrangement; readonly heading: string }) {
  return (
    <div className="move-empty">
      <h2>{heading}</h2>
      <p>
        The two do not differ: every piece and every tray stands in the same place. Move things in “{nameOfArrangement(to)}” on the Room
        sheet, and the order of the day is worked out from the difference.
      </p>
      <Others from={from} to={to} />
    </div>
  );
}

/** When all is done: the room stands so. */
function Finished({ day, to }: { readonly day: Day; readonly to: Arrangement }) {
  const session = useSession();
  if (!day.steps.every(({ state }) => state.state === 'done')) return null;
  return (
    <div className="move-finished">
      <p>Every step is done.</p>
      <MayChange>
        <Button
          kind="strong"
          onPress={() => {
            session.commands.setCurrent(to.id);
            session.announce(`The room stands as "${nameOfArrangement(to)}" now.`);
          }}
        >
          The room stands like this now
        </Button>
      </MayChange>
    </div>
  );
}

interface Part {
  readonly id: 'order' | 'crates';
  readonly name: string;
  readonly content: ReactNode;
  readonly foot?: ReactNode;
}

/** Wide: plan, order, crates side by side. Tablet: plan left, one list right. Phone: one thing at a time, the order first. */
function Frame({ parts, plan }: { readonly parts: readonly Part[]; readonly plan: ReactNode }) {
  const layout = useLayout();
  const [shown, setShown] = useState<Part['id'] | 'plan'>('order');
  const isPhone = layout === 'phone';
  const isSwapped = isPhone || layout === 'tablet';
  const choices = [...parts.map(({ id, name }) => ({ id, name })), ...(isPhone && plan ? [{ id: 'plan' as const, name: 'Plan' }] : [])];
  const isThere = (id: Part['id'] | 'plan'): boolean => !isSwapped || shown === id || (id === 'order' && !isPhone && shown === 'plan');
  const hasMany = plan !== null && parts.length > 1;
  const swap = isSwapped && hasMany && (
    <fieldset className="swap" aria-label="What is shown">
      {choices.map(({ id, name }) => (
        <SwapButton key={id} isShown={isThere(id)} onPress={() => setShown(id)}>
          {name}
        </SwapButton>
      ))}
    </fieldset>
  );
  return (
    <div className={`move-sheet ${layout} ${hasMany ? '' : 'alone'}`}>
      {isPhone && swap}
      {plan && (!isPhone || shown === 'plan') && (
        <ScrollPart className="move-plan" label="Plan of the move">
          {plan}
        </ScrollPart>
      )}
      {layout !== 'tablet' &&
        parts
          .filter(({ id }) => id === 'order' && isThere(id))
          .map(({ id, name, content, foot }) => (
            <ScrollPart key={id} className="move-order" label={name}>
              {content}
              {foot}
            </ScrollPart>
          ))}
      <div className="layout-right">
        {(layout === 'tablet' ? parts.filter(({ id }) => isThere(id)) : parts.filter(({ id }) => id === 'crates' && isThere(id))).map(
          ({ id, name, content, foot }) => (
            <ScrollPart key={id} className={layout === 'tablet' ? 'right-panel swapped' : 'right-panel'} label={name}>
              {layout === 'tablet' && swap}
              {content}
              {foot}
            </ScrollPart>
          ),
        )}
        {layout !== 'tablet' && <TitleBlock />}
      </div>
      {layout === 'tablet' && <FootStrip />}
    </div>
  );
}
