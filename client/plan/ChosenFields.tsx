import type { Opening } from '#model/schema/types.ts';
import { useFollowedArrangement, useSession, useUnits } from '../session/hooks.ts';
import { LengthField } from '../ui/LengthField.tsx';
import { NumberField } from '../ui/NumberField.tsx';
import { Select } from '../ui/Select.tsx';
import { TextField } from '../ui/TextField.tsx';
import { Tick } from '../ui/Tick.tsx';
import { tidyDegrees } from './box.ts';
import type { Item } from './items.ts';
import { wallLength, withWallLength } from './roomShape.ts';
import { writeRoom } from './roomWrites.ts';
import { thingOf } from './things.ts';
import { gapToWall, setGapToWall, turnTo } from './verbs.ts';

/** The chosen thing's figures, typed: where it stands, how large it is, how it is turned. */
export function ChosenFields({ item, isLocked }: { item: Item; isLocked: boolean }) {
  if (item.kind === 'wall') return <WallFields id={item.id} />;
  if (item.kind === 'opening') return <OpeningFields id={item.id} />;
  if (item.kind === 'corner') return <CornerFields id={item.id} />;
  return <ThingFields item={item} isLocked={isLocked} />;
}

function ThingFields({ item, isLocked }: { item: Item; isLocked: boolean }) {
  const session = useSession();
  const units = useUnits();
  // Where it stands is read below, again with each of its steps.
  useFollowedArrangement();
  const thing = thingOf(session, item);
  if (!thing) return null;
  const set = (change: { width?: number; depth?: number; height?: number | null; name?: string }): void => {
    if (item.kind === 'piece') session.commands.changePiece(session.arrangement().id, item.id, change);
    else session.commands.changeFixture(item.id, change);
  };
  const west = gapToWall(session, thing, 'west');
  const north = gapToWall(session, thing, 'north');
  return (
    <div className="chosen-fields">
      {!isLocked && west !== null && (
        <LengthField
          label="West wall"
          value={west}
          units={units}
          least={0}
          onCommit={(mm) => mm !== null && setGapToWall(session, item, 'west', mm)}
        />
      )}
      {!isLocked && north !== null && (
        <LengthField
          label="North wall"
          value={north}
          units={units}
          least={0}
          onCommit={(mm) => mm !== null && setGapToWall(session, item, 'north', mm)}
        />
      )}
      {!isLocked && (
        <NumberField
          label="Turned, °"
          value={tidyDegrees(thing.rotation)}
          least={-360}
          most={360}
          isWhole={false}
          onCommit={(degrees) => degrees !== null && turnTo(session, item, degrees)}
        />
      )}
      <LengthField label="Long" value={thing.width} units={units} onCommit={(mm) => mm !== null && set({ width: mm })} />
      <LengthField label="Deep" value={thing.depth} units={units} onCommit={(mm) => mm !== null && set({ depth: mm })} />
      <LengthField
        label="High"
        value={thing.height}
        units={units}
        mayBeEmpty
        placeholder="not known"
        onCommit={(mm) => set({ height: mm })}
      />
      <TextField label="Name" value={thing.name ?? ''} onCommit={(name) => set({ name })} />
    </div>
  );
}

export const swings: readonly { value: Opening['swing']; text: string }[] = [
  { value: 'in-left', text: 'in, hinge left' },
  { value: 'in-right', text: 'in, hinge right' },
  { value: 'out-left', text: 'out, hinge left' },
  { value: 'out-right', text: 'out, hinge right' },
  { value: 'sliding', text: 'slides' },
  { value: 'none', text: 'no leaf' },
];

function OpeningFields({ id }: { id: string }) {
  const session = useSession();
  const units = useUnits();
  const { room } = session.classroom();
  const opening = room.openings.find((o) => o.id === id);
  if (!opening) return null;
  const set = (change: Parameters<typeof session.commands.changeOpening>[1]): void => {
    session.commands.changeOpening(id, change);
  };
  const long = wallLength(room.corners, opening.from) ?? opening.width;
  return (
    <div className="chosen-fields">
      <LengthField
        label="Along wall"
        value={opening.offset}
        units={units}
        least={0}
        most={Math.max(0, long - opening.width)}
        onCommit={(mm) => mm !== null && set({ offset: mm })}
      />
      <LengthField label="Wide" value={opening.width} units={units} most={long} onCommit={(mm) => mm !== null && set({ width: mm })} />
      {opening.kind === 'window' && (
        <LengthField label="Sill" value={opening.sill} units={units} least={0} onCommit={(mm) => mm !== null && set({ sill: mm })} />
      )}
      {opening.kind === 'door' && (
        <LengthField
          label="Clear at 90°"
          value={opening.clear}
          units={units}
          mayBeEmpty
          placeholder="not known"
          onCommit={(mm) => set({ clear: mm })}
        />
      )}
      {opening.kind === 'door' && (
        <Select label="Opens, seen from inside" value={opening.swing} options={swings} onChange={(swing) => set({ swing })} />
      )}
      <TextField label="Leads to" value={opening.name ?? ''} onCommit={(name) => set({ name })} />
      {opening.kind !== 'window' && (
        <Tick isTicked={opening.exit} onChange={(exit) => set({ exit })}>
          a way out in danger
        </Tick>
      )}
    </div>
  );
}

function WallFields({ id }: { id: string }) {
  const session = useSession();
  const units = useUnits();
  const { room } = session.classroom();
  const long = wallLength(room.corners, id);
  if (long === null) return null;
  return (
    <div className="chosen-fields">
      <LengthField
        label="Long"
        value={long}
        units={units}
        least={100}
        onCommit={(mm) => mm !== null && writeRoom(session, room, withWallLength(room, id, mm))}
      />
    </div>
  );
}

function CornerFields({ id }: { id: string }) {
  const session = useSession();
  const units = useUnits();
  const { corners } = session.classroom().room;
  const corner = corners.find((c) => c.id === id);
  const west = Math.min(...corners.map((c) => c.x));
  const north = Math.min(...corners.map((c) => c.y));
  if (!corner) return null;
  const move = (to: { x: number; y: number }): void => {
    session.commands.moveCorner(id, to);
  };
  return (
    <div className="chosen-fields">
      <LengthField
        label="West edge"
        value={corner.x - west}
        units={units}
        least={0}
        onCommit={(mm) => mm !== null && move({ x: west + mm, y: corner.y })}
      />
      <LengthField
        label="North edge"
        value={corner.y - north}
        units={units}
        least={0}
        onCommit={(mm) => mm !== null && move({ x: corner.x, y: north + mm })}
      />
    </div>
  );
}
