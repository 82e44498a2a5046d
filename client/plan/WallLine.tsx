import { useRef, useState } from 'react';
import { sayLength } from '#model/units/sayLength.ts';
import { useSession, useUnits } from '../session/hooks.ts';
import { Button } from '../ui/Button.tsx';
import { LengthField } from '../ui/LengthField.tsx';
import { Select } from '../ui/Select.tsx';
import { planStoreOf } from './planStore.ts';
import { finishWalls } from './toolPress.ts';
import { usePlanState } from './usePlanState.ts';
import { rectangle, withTypedWall } from './wallDraft.ts';

const turns = [
  { value: '90', text: 'turn right' },
  { value: '-90', text: 'turn left' },
  { value: '0', text: 'straight on' },
  { value: '45', text: 'half right' },
  { value: '-45', text: 'half left' },
] as const;

/** Walls by typed lengths: wall after wall as they were taped, or a plain room at once. Nothing moves while walls come, or a second press would meet another button. */
export function WallLine() {
  const { corners } = usePlanState('corners');
  return (
    <>
      <NextWall />
      <CloseWalls />
      <div className={corners.length === 0 ? 'wall-plain' : 'wall-plain off'}>
        <span className="aside">or at once</span>
        <PlainRoom />
      </div>
    </>
  );
}

function PlainRoom() {
  const session = useSession();
  const store = planStoreOf(session);
  const units = useUnits();
  const [length, setLength] = useState<number | null>(null);
  const [width, setWidth] = useState<number | null>(null);
  function layOut() {
    if (length === null || width === null) return;
    if (finishWalls(session, rectangle(length, width))) store.set({ tool: null, corners: [], wholeRoom: store.state().wholeRoom + 1 });
  }
  return (
    <>
      <LengthField label="Room, length" value={length} units={units} least={500} mayBeEmpty onTyping={setLength} onCommit={setLength} />
      <LengthField label="width" value={width} units={units} least={500} mayBeEmpty onTyping={setWidth} onCommit={setWidth} />
      <Button isDisabled={length === null || width === null} onPress={layOut}>
        Lay out
      </Button>
    </>
  );
}

function NextWall() {
  const session = useSession();
  const store = planStoreOf(session);
  const { corners } = usePlanState('corners');
  const units = useUnits();
  const field = useRef<HTMLDivElement>(null);
  const [length, setLength] = useState<number | null>(null);
  const [turned, setTurned] = useState<(typeof turns)[number]['value']>('90');
  function add(mm: number | null) {
    // The next wall is typed next, whichever way this one was drawn.
    field.current?.querySelector('input')?.focus();
    if (mm === null) {
      session.announce('Type how long the wall is, such as 4.20.');
      return;
    }
    const drawn = withTypedWall(corners, mm, Number(turned));
    setLength(null);
    if (!drawn.closes) {
      store.set({ corners: drawn.corners, wholeRoom: store.state().wholeRoom });
      session.announce(`Wall ${drawn.corners.length - 1} is drawn, ${sayLength(mm, units)}. Type the next one.`);
    } else if (finishWalls(session, drawn.corners)) store.set({ corners: [], tool: null });
  }
  return (
    <>
      <div ref={field} className="wall-next">
        <LengthField
          label={corners.length < 2 ? 'First wall' : 'Next wall'}
          value={length}
          units={units}
          mayBeEmpty
          onTyping={setLength}
          onCommit={setLength}
          onEnter={add}
        />
      </div>
      <fieldset className="wall-turn" disabled={corners.length < 2}>
        <Select label="then" value={turned} options={turns} onChange={setTurned} />
      </fieldset>
      <Button isDisabled={length === null} onPress={() => add(length)}>
        Draw it
      </Button>
    </>
  );
}

function CloseWalls() {
  const session = useSession();
  const store = planStoreOf(session);
  const { corners } = usePlanState('corners');
  return (
    <>
      <Button kind="quiet" isDisabled={corners.length === 0} onPress={() => store.set({ corners: corners.slice(0, -1) })}>
        Take the last corner back
      </Button>
      <Button
        kind="strong"
        isDisabled={corners.length < 3}
        onPress={() => {
          if (finishWalls(session, corners)) store.set({ corners: [], tool: null });
        }}
      >
        Close the room
      </Button>
    </>
  );
}
