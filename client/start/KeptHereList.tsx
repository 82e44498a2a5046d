import { Suspense, useEffect, useState } from 'react';
import { late } from '../ui/late.tsx';
import { TextLink } from '../ui/TextLink.tsx';
import { type KeptRoom, roomsKeptHere } from './keptHere.ts';

const ForgetDialog = late(() => import('./ForgetDialog.tsx').then((m) => m.ForgetDialog));

/** The classrooms that lie on this device; each can be opened, or forgotten here. */
export function KeptHereList() {
  const [rooms, setRooms] = useState<readonly KeptRoom[] | null>(null);
  const [leaving, setLeaving] = useState<KeptRoom | null>(null);

  useEffect(() => {
    let isGone = false;
    roomsKeptHere().then(
      (found) => !isGone && setRooms(found),
      () => !isGone && setRooms([]),
    );
    return () => {
      isGone = true;
    };
  }, []);

  if (rooms === null) return <p className="aside">Being looked up …</p>;
  return (
    <>
      {rooms.length === 0 ? (
        <p className="aside">No classroom was opened here yet. One that is shared opens by its address.</p>
      ) : (
        <ul className="start-list kept-here">
          {rooms.map((room) => (
            <li key={room.id}>
              <a href={`#room=${room.id}`}>{nameOf(room)}</a>
              <span className="aside">opened {sayDay(room.opened)}</span>
              <TextLink aria-label={`Forget ${nameOf(room)} on this device`} onPress={() => setLeaving(room)}>
                Forget on this device
              </TextLink>
            </li>
          ))}
        </ul>
      )}
      {leaving && (
        <Suspense fallback={null}>
          <ForgetDialog
            room={leaving}
            name={nameOf(leaving)}
            onClose={() => setLeaving(null)}
            onForgotten={() => {
              setRooms(rooms.filter((room) => room.id !== leaving.id));
              setLeaving(null);
            }}
          />
        </Suspense>
      )}
    </>
  );
}

const nameOf = (room: KeptRoom): string => room.name || 'Class without a name';

function sayDay(opened: number | null): string {
  if (opened === null) return 'earlier';
  return new Date(opened).toLocaleDateString('en-GB', { day: 'numeric', month: 'long', year: 'numeric' });
}
