import { useFrameDialogs } from '../frame/frameDialogs.ts';
import { useLayout } from '../frame/useLayout.ts';
import { useMayChange, useSession } from '../session/hooks.ts';
import { Button } from '../ui/Button.tsx';
import { VerbMenu } from '../ui/VerbMenu.tsx';
import { planStoreOf } from './planStore.ts';
import { asides, isForLookers, isSameTool, moreVerbs, takeUpTool, type Verb, verbs } from './tools.ts';
import { usePlanState } from './usePlanState.ts';

/** What can be drawn, in words, each with its key. */
export function DrawVerbs() {
  const layout = useLayout();
  const mayChange = useMayChange();
  if (!mayChange) return <LookVerbs isCompact={layout === 'tablet' || layout === 'phone'} />;
  return layout === 'tablet' || layout === 'phone' ? <CompactVerbs /> : <VerbLine />;
}

/** Of who may only look: the tape and remarks, which move nothing. */
function LookVerbs({ isCompact }: { readonly isCompact: boolean }) {
  const session = useSession();
  const { tool } = usePlanState('tool');
  const theirs = asides.filter(({ tool: { kind } }) => isForLookers(kind));
  if (!isCompact)
    return (
      <div className="verbs draw-line">
        <span className="draw-word look-word">You may look and remark</span>
        {theirs.map((verb) => (
          <VerbButton key={verb.name} verb={verb} />
        ))}
      </div>
    );
  return (
    <div className="draw-compact">
      <span className="look-word">You may look and remark</span>
      {theirs.map((verb) => (
        <Button key={verb.name} kind={isSameTool(tool, verb.tool) ? 'strong' : 'quiet'} onPress={() => takeUpTool(session, verb.tool)}>
          {verb.name}
        </Button>
      ))}
    </div>
  );
}

function VerbLine() {
  const session = useSession();
  const { hasLetterKeys } = usePlanState('hasLetterKeys');
  const dialogs = useFrameDialogs();
  const store = planStoreOf(session);
  return (
    <div className="verbs draw-line">
      <span className="draw-word">Draw</span>
      {verbs.map((verb) => (
        <VerbButton key={verb.name} verb={verb} />
      ))}
      <VerbMenu
        label="More"
        items={[
          { id: 'survey', text: 'Measure the room', run: () => dialogs.open('survey') },
          { id: 'picture', text: 'Picture under the drawing', run: () => takeUpTool(session, { kind: 'picture', step: 'look' }) },
          ...moreVerbs.map((verb) => ({
            id: `${verb.tool.kind}-${verb.name}`,
            text: verb.name,
            run: () => takeUpTool(session, verb.tool),
          })),
          { id: 'keys', text: 'Keys', run: () => dialogs.open('keys') },
          {
            id: 'letters',
            text: hasLetterKeys ? 'Switch letter keys off' : 'Switch letter keys on',
            run: () => store.set({ hasLetterKeys: !hasLetterKeys }),
          },
        ]}
      />
      <span className="divide" aria-hidden="true" />
      {asides.map((verb) => (
        <VerbButton key={verb.name} verb={verb} />
      ))}
    </div>
  );
}

function VerbButton({ verb }: { verb: Verb }) {
  const session = useSession();
  const { tool, hasLetterKeys } = usePlanState('tool', 'hasLetterKeys');
  return (
    <button type="button" className="verb-word" aria-pressed={isSameTool(tool, verb.tool)} onClick={() => takeUpTool(session, verb.tool)}>
      {verb.name} {hasLetterKeys && verb.letter && <kbd>{verb.letter}</kbd>}
    </button>
  );
}

/** On tablets and phones: large buttons, the things to draw behind one of them. */
function CompactVerbs() {
  const session = useSession();
  const { tool } = usePlanState('tool');
  const dialogs = useFrameDialogs();
  return (
    <div className="draw-compact">
      <VerbMenu
        label="Draw"
        items={[
          { id: 'survey', text: 'Measure the room', run: () => dialogs.open('survey') },
          { id: 'picture', text: 'Picture under the drawing', run: () => takeUpTool(session, { kind: 'picture', step: 'look' }) },
          ...[...verbs, ...moreVerbs].map((verb) => ({
            id: `${verb.tool.kind}-${verb.name}`,
            text: verb.name,
            run: () => takeUpTool(session, verb.tool),
          })),
        ]}
      />
      {asides.map((verb) => (
        <Button key={verb.name} kind={isSameTool(tool, verb.tool) ? 'strong' : 'quiet'} onPress={() => takeUpTool(session, verb.tool)}>
          {verb.name}
        </Button>
      ))}
    </div>
  );
}
