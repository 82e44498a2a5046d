import { useState } from 'react';
import { distance } from '#model/geometry/vec.ts';
import { PICTURE_BYTES, type Picture, pictureOf } from '#model/schema/picture.ts';
import { sayLength } from '#model/units/sayLength.ts';
import { focusPlan } from '../front/frontFocus.ts';
import { tidyDegrees } from '../plan/box.ts';
import { neatlineBounds } from '../plan/neatline.ts';
import { planStoreOf } from '../plan/planStore.ts';
import { takeUpTool } from '../plan/tools.ts';
import { usePlanState } from '../plan/usePlanState.ts';
import { useClassroom, useSession, useUnits } from '../session/hooks.ts';
import { Button } from '../ui/Button.tsx';
import { Field } from '../ui/Field.tsx';
import { LengthField } from '../ui/LengthField.tsx';
import { NumberField } from '../ui/NumberField.tsx';
import { Select } from '../ui/Select.tsx';
import { TextLink } from '../ui/TextLink.tsx';
import { Tick } from '../ui/Tick.tsx';
import { loadPicture } from './loadPicture.ts';
import { type Lie, placeOver, scaledByTwoPoints } from './placePicture.ts';
import '../styles/survey.css';

/** The picture of an existing plan under the drawing: chosen, scaled by two points, slid, turned, faded, traced. */
export function PictureLine() {
  const session = useSession();
  const { room } = useClassroom();
  const { tool } = usePlanState('tool');
  const picture = pictureOf(room.picture);
  if (!picture) return <ChoosePicture isOther={room.picture !== null} />;
  const change = (set: Partial<Picture>): void => {
    const now = pictureOf(session.classroom().room.picture);
    if (now) session.commands.changeRoom({ picture: { ...now, ...set } });
  };
  return tool?.kind === 'picture' && tool.step === 'scale' ? (
    <ScaleFields picture={picture} onChange={change} />
  ) : (
    <LookFields picture={picture} onChange={change} />
  );
}

function ChoosePicture({ isOther }: { isOther: boolean }) {
  const session = useSession();
  const { room } = useClassroom();
  const [trouble, setTrouble] = useState<string | null>(null);
  const [isBusy, setBusy] = useState(false);
  async function read(file: File) {
    setBusy(true);
    setTrouble(null);
    try {
      const { source, width, height, isSmaller } = await loadPicture(file);
      const picture = {
        source,
        width,
        height,
        ...placeOver({ width, height }, neatlineBounds(room.corners)),
        fade: 40,
        shown: true,
        name: file.name,
      };
      session.commands.changeRoom({ picture });
      session.announce(
        `The picture lies under the drawing${isSmaller ? `, made smaller to ${width} × ${height} px so that all tablets can keep it` : ''}. Set its scale by two points.`,
      );
    } catch (error) {
      setTrouble(error instanceof Error ? error.message : String(error));
    } finally {
      setBusy(false);
    }
  }
  return (
    <>
      <Field
        label="Picture of a plan: JPG, PNG or WebP"
        echo={isBusy ? 'It is being read …' : `Kept with the classroom, made smaller to ${PICTURE_BYTES / 1024} kB.`}
        wrong={trouble}
      >
        {(wiring) => (
          <input
            {...wiring}
            type="file"
            accept="image/png,image/jpeg,image/webp"
            onChange={(event) => {
              const file = event.target.files?.[0];
              event.target.value = '';
              if (file) void read(file);
            }}
          />
        )}
      </Field>
      {isOther && <p className="aside">What another program put here is kept until a picture takes its place.</p>}
    </>
  );
}

interface FieldsProps {
  readonly picture: Picture;
  readonly onChange: (set: Partial<Picture>) => void;
}

function LookFields({ picture, onChange }: FieldsProps) {
  const session = useSession();
  const { room } = useClassroom();
  const units = useUnits();
  const store = planStoreOf(session);
  const { minX, minY } = neatlineBounds(room.corners);
  const [hasPlace, setPlace] = useState(false);
  const scale = () => {
    store.set({ tool: { kind: 'picture', step: 'scale' }, picturePoints: [], cross: null });
    focusPlan();
    session.announce('Press one end of something whose length you know, or move the cross there by the arrows and press Enter.');
  };
  return (
    <>
      <Button kind="strong" onPress={scale}>
        Set its scale by two points
      </Button>
      <Field label="Faded">
        {(wiring) => (
          <input
            {...wiring}
            type="range"
            min={0}
            max={100}
            step={5}
            value={picture.fade}
            aria-valuetext={`${picture.fade} of 100`}
            onPointerDown={() => session.undo.beginStep()}
            onPointerUp={() => session.undo.endStep()}
            onPointerCancel={() => session.undo.endStep()}
            onBlur={() => session.undo.endStep()}
            onChange={(event) => onChange({ fade: Number(event.target.value) })}
          />
        )}
      </Field>
      <Tick isTicked={picture.shown} onChange={(shown) => onChange({ shown })}>
        shown
      </Tick>
      {hasPlace && (
        <>
          <NumberField
            label="Turned, °"
            value={tidyDegrees(picture.rotation)}
            least={-360}
            most={360}
            isWhole={false}
            onCommit={(rotation) => rotation !== null && onChange({ rotation })}
          />
          <LengthField
            label="Middle, from west"
            value={Math.round(picture.x - minX)}
            units={units}
            least={-100_000}
            onCommit={(mm) => mm !== null && onChange({ x: minX + mm })}
          />
          <LengthField
            label="from north"
            value={Math.round(picture.y - minY)}
            units={units}
            least={-100_000}
            onCommit={(mm) => mm !== null && onChange({ y: minY + mm })}
          />
        </>
      )}
      <Button onPress={() => takeUpTool(session, { kind: 'wall' })}>Trace its walls</Button>
      <TextLink onPress={() => setPlace(!hasPlace)}>{hasPlace ? 'Hide its place and turn' : 'Type its place and turn'}</TextLink>
      <TextLink
        onPress={() => {
          session.commands.changeRoom({ picture: null });
          session.announce('The picture is taken away. Take back brings it again.');
        }}
      >
        Take it away
      </TextLink>
    </>
  );
}

const lies: readonly { value: Lie; text: string }[] = [
  { value: 'as it lies', text: 'as it lies' },
  { value: 'level', text: 'level' },
  { value: 'upright', text: 'upright' },
];

function ScaleFields({ picture, onChange }: FieldsProps) {
  const session = useSession();
  const units = useUnits();
  const store = planStoreOf(session);
  const { picturePoints } = usePlanState('picturePoints');
  const [long, setLong] = useState<number | null>(null);
  const [lie, setLie] = useState<Lie>('as it lies');
  const [from, to] = picturePoints;
  const again = () => {
    store.set({ picturePoints: [] });
    focusPlan();
  };
  const back = () => store.set({ tool: { kind: 'picture', step: 'look' }, picturePoints: [], cross: null });
  function set(mm: number | null) {
    if (!from || !to || mm === null) return;
    const place = scaledByTwoPoints(picture, from, to, mm, lie);
    if (!place) {
      session.announce('The two points are one. Press two ends that lie apart.');
      return;
    }
    onChange(place);
    back();
    store.set({ wholeRoom: store.state().wholeRoom + 1 });
    session.announce(`The picture is to scale: what was pressed is ${sayLength(mm, units)} long.`);
  }
  return (
    <>
      <p role="status">
        {!from
          ? 'Press one end of something whose length you know.'
          : !to
            ? 'Press its other end.'
            : `Now ${sayLength(Math.round(distance(from, to)), units)}. Type how long it is.`}
      </p>
      {from && to && (
        <>
          <LengthField
            label="It is so long"
            value={long}
            units={units}
            least={50}
            mayBeEmpty
            onTyping={setLong}
            onCommit={setLong}
            onEnter={set}
            autoFocus
          />
          <Select label="and lies" value={lie} options={lies} onChange={setLie} />
          <Button kind="strong" isDisabled={long === null} onPress={() => set(long)}>
            Set the scale
          </Button>
        </>
      )}
      {from && <Button onPress={() => again()}>Press again</Button>}
      <TextLink onPress={back}>Leave the scale</TextLink>
    </>
  );
}
