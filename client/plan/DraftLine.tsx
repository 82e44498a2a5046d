import { Suspense, useEffect, useRef, useState } from 'react';
import { sayLength } from '#model/units/sayLength.ts';
import { useSession, useUnits } from '../session/hooks.ts';
import { readMe } from '../session/me.ts';
import '../styles/draft.css';
import { Button } from '../ui/Button.tsx';
import { LengthField } from '../ui/LengthField.tsx';
import { late } from '../ui/late.tsx';
import { TextLink } from '../ui/TextLink.tsx';
import { planStoreOf } from './planStore.ts';
import { chooseAll, chooseSeveral } from './set/chosenSet.ts';
import { sayStraight } from './tapeBetween.ts';
import { noDraft, sayTool, toolName } from './tools.ts';
import { useChosenItems } from './useChosenItems.ts';
import { usePlanState } from './usePlanState.ts';
import { WallLine } from './WallLine.tsx';

const PictureLine = late(() => import('../survey/PictureLine.tsx').then((m) => m.PictureLine));

/** What the tool in hand asks: where to press, how large the new thing is, what the tape says. */
export function DraftLine() {
  const session = useSession();
  const { tool, tape, remarkAt } = usePlanState('tool', 'tape', 'remarkAt');
  const store = planStoreOf(session);
  const chosen = useChosenItems();
  if (!tool) return null;
  // What the tape says, or the field of the remark, needs the room that the hint took.
  const hasHint = tool.kind !== 'picture' && !(tool.kind === 'tape' && tape.length === 2) && !remarkAt;
  return (
    <section
      className={`draft-line ${tool.kind}${tool.kind === 'picture' || tool.kind === 'wall' ? ' in-flow' : ''}`}
      aria-label={`Drawing: ${toolName(tool)}`}
    >
      <p>
        <b>{toolName(tool)}.</b> {tool.kind === 'several' && chosen.length > 0 ? `${chosen.length} chosen` : hasHint && sayTool(tool)}
      </p>
      {tool.kind === 'wall' && <WallLine />}
      {(tool.kind === 'piece' || tool.kind === 'fixture' || tool.kind === 'opening') && <SizeFields isOpening={tool.kind === 'opening'} />}
      {tool.kind === 'picture' && (
        <Suspense fallback={null}>
          <PictureLine />
        </Suspense>
      )}
      {tool.kind === 'tape' && <TapeLine />}
      {tool.kind === 'tape' && tape.length === 2 && <TextLink onPress={() => store.set({ ...noDraft, tool })}>Measure another</TextLink>}
      {tool.kind === 'several' && <SeveralLine isNone={chosen.length === 0} />}
      {tool.kind === 'remark' && remarkAt && <RemarkForm />}
      <TextLink onPress={() => store.set(noDraft)}>{tool.kind === 'several' ? 'Done' : 'Leave off'}</TextLink>
    </section>
  );
}

function SizeFields({ isOpening }: { isOpening: boolean }) {
  const store = planStoreOf(useSession());
  const { size } = usePlanState('size');
  const units = useUnits();
  return (
    <>
      <LengthField
        label={isOpening ? 'Wide' : 'Long'}
        value={size.width}
        units={units}
        onCommit={(mm) => mm !== null && store.set({ size: { ...size, width: mm } })}
      />
      {!isOpening && (
        <LengthField
          label="Deep"
          value={size.depth}
          units={units}
          onCommit={(mm) => mm !== null && store.set({ size: { ...size, depth: mm } })}
        />
      )}
      {!isOpening && (
        <LengthField
          label="High"
          value={size.height}
          units={units}
          mayBeEmpty
          placeholder="not known"
          onCommit={(mm) => store.set({ size: { ...size, height: mm } })}
        />
      )}
    </>
  );
}

/** All at once, or none. */
function SeveralLine({ isNone }: { readonly isNone: boolean }) {
  const session = useSession();
  return (
    <>
      <TextLink onPress={() => chooseAll(session)}>All that stands</TextLink>
      <TextLink isDisabled={isNone} onPress={() => chooseSeveral(session, [])}>
        None
      </TextLink>
    </>
  );
}

function TapeLine() {
  const { tape, tapeOn, tapeWay } = usePlanState('tape', 'tapeOn', 'tapeWay');
  const session = useSession();
  const units = useUnits();
  const [from, to] = tape;
  if (!from || !to) return null;
  const across = `${sayLength(Math.abs(to.x - from.x), units)} across, ${sayLength(Math.abs(to.y - from.y), units)} down`;
  const wide = tapeWay?.width ? sayLength(tapeWay.width, units) : '';
  return (
    <div className="tape-says">
      {sayStraight(session, tape, tapeOn).map((part, i) => (
        <p key={part}>
          <Figure words={part} figure={/^.+?(?= straight| from)/.exec(part)?.[0] ?? ''} />{' '}
          {i === 0 && <span className="aside">({across})</span>}
        </p>
      ))}
      <p>{tapeWay ? <Figure words={tapeWay.said} figure={wide} /> : 'How wide the way is for walking is being looked at.'}</p>
    </div>
  );
}

/** The figure that is asked for stands out of its sentence. */
function Figure({ words, figure }: { readonly words: string; readonly figure: string }) {
  const at = words.indexOf(figure);
  return (
    <>
      {words.slice(0, at)}
      <b>{figure}</b>
      {words.slice(at + figure.length)}
    </>
  );
}

function RemarkForm() {
  const session = useSession();
  const store = planStoreOf(session);
  const { remarkAt } = usePlanState('remarkAt');
  const [text, setText] = useState('');
  const [trouble, setTrouble] = useState<string | null>(null);
  const field = useRef<HTMLInputElement>(null);
  // Where it stands is said; what is wanted next are its words. A finger's press gives the drawing the focus a moment later.
  useEffect(() => {
    const focus = (): void => field.current?.focus();
    focus();
    const later = setTimeout(focus, 80);
    return () => clearTimeout(later);
  }, []);
  if (!remarkAt) return null;
  function keep() {
    if (text.trim() === '' || !remarkAt) return;
    const { on, at } = remarkAt;
    const id = session.commands.addRemark({ text: text.trim(), on, x: at.x, y: at.y, by: readMe()?.initials ?? '' });
    if (id === '') {
      // The words stay where they were typed.
      setTrouble('It could not be put on the sheet. The words are still here: try again, or copy them.');
      return;
    }
    store.set(noDraft);
    session.announce('The remark is on the sheet.');
  }
  return (
    <>
      <div className="field remark-field">
        {/* The line says "Remark." already. */}
        <label className="only-heard" htmlFor="new-remark">
          Remark
        </label>
        <input
          ref={field}
          id="new-remark"
          value={text}
          maxLength={500}
          onChange={(event) => setText(event.target.value)}
          onKeyDown={(event) => event.key === 'Enter' && keep()}
        />
      </div>
      <Button kind="strong" isDisabled={text.trim() === ''} onPress={keep}>
        Put it there
      </Button>
      {trouble && (
        <p role="alert" className="trouble-text">
          {trouble}
        </p>
      )}
    </>
  );
}
