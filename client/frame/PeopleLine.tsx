import type { Scene } from '#model/scene/types.ts';
import { usePeople, useScene, useViewOf } from '../session/hooks.ts';
import type { Person, SheetName } from '../session/types.ts';
import { TextLink } from '../ui/TextLink.tsx';
import { useFrameDialogs } from './frameDialogs.ts';

const sheetWords: Readonly<Record<SheetName, string>> = {
  room: 'at the room',
  materials: 'at materials',
  places: 'at places',
  'move-day': 'at the move day',
};

/** Initials in a box with the person's own edge, and in words where they are. */
export function PeopleLine() {
  const people = usePeople();
  const scene = useScene();
  const sheet = useViewOf('sheet');
  const dialogs = useFrameDialogs();

  function where(person: Person): string {
    const other = scene.classroom.arrangements.find(({ id }) => id === person.elsewhere);
    if (other) return `at “${other.name}”`;
    if (person.holds !== null) return `${person.preview ? 'moving' : 'at'} ${nameOfHeld(person.holds, scene)}`;
    return person.sheet === null || person.sheet === sheet ? 'looking' : sheetWords[person.sheet];
  }

  return (
    <ul className="people">
      {people.map((person) => (
        <li key={person.clientId} className="person">
          <Initials person={person} />
          {person.isMe ? (
            <TextLink onPress={() => dialogs.open('me')}>{person.initials === '' ? 'say who you are' : 'you'}</TextLink>
          ) : (
            <span>{where(person)}</span>
          )}
        </li>
      ))}
    </ul>
  );
}

function nameOfHeld(id: string, scene: Scene): string {
  const opening = scene.classroom.room.openings.find((one) => one.id === id);
  if (opening) return opening.name || 'a door or window';
  return scene.bodyById.get(id)?.label ?? scene.materialById.get(id)?.name ?? 'a thing that is gone';
}

function Initials({ person }: { person: Pick<Person, 'name' | 'initials' | 'edge'> }) {
  return (
    <abbr className={`initials ${person.edge}`} title={person.name || 'name not given'}>
      {person.initials || '–'}
    </abbr>
  );
}
