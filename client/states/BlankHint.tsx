import { takeUpTool } from '../plan/tools.ts';
import { usePlanState } from '../plan/usePlanState.ts';
import { useClassroom, useMayChange, useSession } from '../session/hooks.ts';
import { TextLink } from '../ui/TextLink.tsx';
import { isNotDrawn } from './notDrawn.ts';
import '../styles/states.css';

/** On a sheet that nobody drew on yet. */
export function BlankHint() {
  const session = useSession();
  const { room } = useClassroom();
  const mayChange = useMayChange();
  const { tool } = usePlanState('tool');
  if (!isNotDrawn(room) || tool !== null || !mayChange) return null;
  return (
    <p className="blank-hint">
      <TextLink onPress={() => takeUpTool(session, { kind: 'wall' })}>Draw the first wall, or type length and width</TextLink>
    </p>
  );
}
