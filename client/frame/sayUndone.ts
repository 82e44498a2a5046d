import { pieceNumbers } from '#model/schema/pieceNumbers.ts';
import type { Arrangement, Classroom } from '#model/schema/types.ts';
import { lower, nameOfFixture, nameOfOpening, nameOfPiece } from '../plan/describe.ts';

type How = 'back' | 'again';
type What = 'came' | 'went' | 'moved' | 'changed';
interface Change<T> {
  readonly is: T;
  readonly what: What;
}

const words: Readonly<Record<How, Readonly<Record<What, string>>>> = {
  back: { came: 'is there again', went: 'is gone again', moved: 'stands where it stood', changed: 'is as it was' },
  again: { came: 'is there again', went: 'is gone again', moved: 'is moved again', changed: 'is changed again' },
};

/**
 * What taking back, or doing again, did: read from the classroom before and after, whose untouched parts are the same objects.
 * "Taken back: table T3 stands where it stood."
 * @param shown id of the arrangement that is on the sheet; another one is named
 */
export function sayUndone(before: Classroom, after: Classroom, how: How, shown: string): string {
  const [first, ...more] = changesOf(before, after, how, shown);
  const head = how === 'back' ? 'Taken back' : 'Done again';
  if (first === undefined) return `${head}.`;
  return `${head}: ${first}${more.length === 0 ? '' : `, and ${more.length} more`}.`;
}

function changesOf(before: Classroom, after: Classroom, how: How, shown: string): string[] {
  const say = (name: string, what: What): string => `${name} ${words[how][what]}`;
  const arrangements = differences(before.arrangements, after.arrangements, ({ id }) => id);
  const inside = arrangements.flatMap(({ is, what }) => {
    const was = before.arrangements.find(({ id }) => id === is.id);
    if (what !== 'changed' || !was) return [say(`the arrangement “${is.name}”`, what)];
    const found = insideOf(was, is, { before, after });
    const where = is.id === shown ? '' : `, in “${is.name}”,`;
    if (found.length > 0) return found.map(({ name, what: how }) => say(`${name}${where}`, how));
    return changedKeys(was, is).every((key) => key === 'pieces') ? [] : [say(`the arrangement “${is.name}”`, 'changed')];
  });
  const trays = new Set(arrangements.flatMap(({ is }) => placed(is, before, after)));
  const materials = differences(before.materials, after.materials, ({ id }) => id).filter(({ is }) => !trays.has(is.id));
  const notes = differences(before.notes, after.notes, ({ id }) => id);
  const told = new Set(['arrangements', 'materials', 'notes', 'room', 'left', 'moveDay']);
  const keys = [...new Set([...Object.keys(before), ...Object.keys(after)])] as (keyof Classroom)[];
  return [
    ...(before.room === after.room ? [] : roomOf(before.room, after.room).map(({ name, what }) => say(name, what))),
    ...inside,
    ...materials.map(({ is, what }) => say(`the material ${is.name}`, what)),
    ...notes.map(({ what }) => say('a remark', what)),
    ...(before.left === after.left
      ? []
      : [how === 'back' ? 'what is left as it is, is as it was' : 'what is left as it is, is changed again']),
    ...(before.moveDay === after.moveDay ? [] : [say('the list of the move day', 'changed')]),
    ...(keys.some((key) => !told.has(key) && before[key] !== after[key]) ? [say('the class', 'changed')] : []),
  ];
}

interface Named {
  readonly name: string;
  readonly what: What;
}

function insideOf(was: Arrangement, is: Arrangement, room: { before: Classroom; after: Classroom }): Named[] {
  const [here, there] = [pieceNumbers(room.before), pieceNumbers(room.after)];
  const pieces = differences(was.pieces, is.pieces, ({ id }) => id, ['x', 'y', 'rotation']);
  // What comes or goes with its shelf is not told of by itself.
  const whole = new Set(pieces.filter(({ what }) => what === 'came' || what === 'went').map(({ is: { id } }) => id));
  const materials = new Map([...room.before.materials, ...room.after.materials].map(({ id, name }) => [id, name]));
  return [
    ...pieces.map(({ is: piece, what }) => ({ name: lower(nameOfPiece(piece, what === 'went' ? here : there)), what })),
    ...differences(was.placements, is.placements, ({ material }) => material)
      .filter(({ is: { piece } }) => piece === null || !whole.has(piece))
      .map(({ is: { material }, what }) => ({
        name: `${materials.get(material) || 'a tray'}`,
        what: what === 'changed' ? ('moved' as const) : what,
      })),
  ];
}

const placed = (is: Arrangement, before: Classroom, after: Classroom): string[] => {
  const [was, now] = [before, after].map(({ arrangements }) => arrangements.find(({ id }) => id === is.id)?.placements ?? []);
  return differences(was ?? [], now ?? [], ({ material }) => material).map(({ is: { material } }) => material);
};

function roomOf(was: Classroom['room'], is: Classroom['room']): Named[] {
  // Doors and fixtures go with the walls.
  if (was.corners !== is.corners) return [{ name: 'the shape of the room', what: 'changed' }];
  const found = [
    ...differences(was.openings, is.openings, ({ id }) => id, ['from', 'offset']).map(({ is: one, what }) => ({
      name: nameOfOpening(one),
      what,
    })),
    ...differences(was.fixtures, is.fixtures, ({ id }) => id, ['x', 'y', 'rotation']).map(({ is: one, what }) => ({
      name: nameOfFixture(one),
      what,
    })),
  ].map(({ name, what }) => ({ name: lower(name), what }));
  return found.length > 0 ? found : [{ name: 'the room', what: 'changed' }];
}

/** @param place keys that say where a thing is: when no other differs it was moved */
function differences<T extends object>(
  was: readonly T[],
  is: readonly T[],
  idOf: (one: T) => string,
  place: readonly string[] = [],
): Change<T>[] {
  if (was === is) return [];
  const [then, now] = [was, is].map((list) => new Map(list.map((one) => [idOf(one), one])));
  const changes: Change<T>[] = [];
  for (const [id, one] of now ?? []) {
    const earlier = then?.get(id);
    if (!earlier) changes.push({ is: one, what: 'came' });
    else if (earlier !== one && changedKeys(earlier, one).some((key) => key !== 'number'))
      changes.push({ is: one, what: isMoved(earlier, one, place) ? 'moved' : 'changed' });
  }
  for (const [id, one] of then ?? []) if (!now?.has(id)) changes.push({ is: one, what: 'went' });
  return changes;
}

function isMoved(was: object, is: object, place: readonly string[]): boolean {
  const keys = changedKeys(was, is);
  return keys.length > 0 && keys.every((key) => place.includes(key));
}

/** The number that is kept beside a shelf when another goes is no change that anybody made to it. */
function changedKeys(was: object, is: object): string[] {
  const [before, after] = [was, is].map((one) => new Map<string, unknown>(Object.entries(one)));
  return [...new Set([...(before?.keys() ?? []), ...(after?.keys() ?? [])])].filter((key) => before?.get(key) !== after?.get(key));
}
