import { useState } from 'react';
import { useSession, useUnits } from '../session/hooks.ts';
import { Button } from '../ui/Button.tsx';
import { LengthField } from '../ui/LengthField.tsx';
import { Select } from '../ui/Select.tsx';
import { planStoreOf } from './planStore.ts';
import { finishWalls } from './toolPress.ts';
import { usePlanState } from './usePlanState.ts';
import { rectangle, typedCorner } from './wallDraft.ts';

const turns = [
  { value: '90', text: 'turn right' },
  { value: '-90', text: 'turn left' },
  { value: '0', text: 'straight on' },
  { value: '45', text: 'half right' },
  { value: '-45', text: 'half left' },
] as const;

/** Walls by typed lengths: a plain room at once, or wall after wall as they were taped. */
export function WallLine() {
  const { corners } = usePlanState();
  return corners.length === 0 ? (
    <>
      <PlainRoom />
      <span className="aside">or</span>
      <NextWall />
    </>
  ) : (
    <>
      <NextWall />
      <CloseWalls />
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
  const store = planStoreOf(useSession());
  const { corners } = usePlanState();
  const units = useUnits();
  const [length, setLength] = useState<number | null>(null);
  const [turned, setTurned] = useState<(typeof turns)[number]['value']>('90');
  function add() {
    if (length === null) return;
    const start = corners.length === 0 ? [{ x: 0, y: 0 }] : corners;
    store.set({ corners: [...start, typedCorner(start, length, Number(turned))], wholeRoom: store.state().wholeRoom });
  }
  return (
    <>
      {corners.length >= 2 && <Select label="then" value={turned} options={turns} onChange={setTurned} />}
      <LengthField
        label={corners.length < 2 ? 'First wall' : 'Next wall'}
        value={length}
        units={units}
        mayBeEmpty
        onTyping={setLength}
        onCommit={setLength}
      />
      <Button isDisabled={length === null} onPress={add}>
        Draw it
      </Button>
    </>
  );
}

function CloseWalls() {
  const session = useSession();
  const store = planStoreOf(session);
  const { corners } = usePlanState();
  return (
    <>
      <Button kind="quiet" onPress={() => store.set({ corners: corners.slice(0, -1) })}>
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
