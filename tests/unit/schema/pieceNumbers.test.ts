import { describe, expect, it } from 'vitest';
import { moveNames } from '#client/moveDay/names.ts';
import { nextNumber } from '#client/plan/numbers.ts';
import { createDocument } from '#model/document/openDocument.ts';
import { classroom as classroomSchema } from '#model/schema/classroom.ts';
import { pieceNumbers } from '#model/schema/pieceNumbers.ts';
import type { Arrangement, Classroom } from '#model/schema/types.ts';
import { demoRoom } from '#tests/support/demo/demoRoom.ts';
import { type MovePiece, moveRoom } from '#tests/support/moveRoom.ts';

// What a number is for is common practice, no source: it is lettered on plan, crate and shelf, and called out on the day of the move.

const shelf = (id: string, name: string, more: Partial<MovePiece> = {}): MovePiece => ({
  id,
  kind: 'shelf',
  name,
  x: 1000,
  y: 1000,
  width: 1200,
  depth: 320,
  height: 700,
  ...more,
});
const made = (count: number): MovePiece[] => Array.from({ length: count }, (_, i) => shelf(`shelf-${'abcdefgh'[i]}9`, `Shelf ${i + 1}`));
const numbersOf = (room: Pick<Classroom, 'arrangements'>) => Object.fromEntries(pieceNumbers(room));
const at = (room: Classroom, index: number): Arrangement => room.arrangements[index] as Arrangement;

/** Six shelves as the draw verb names them; the second is put away in the first arrangement only. */
const six = () => {
  const document = createDocument(moveRoom(made(6), made(6)));
  document.commands.putAwayPiece('a1', 'shelf-b9');
  return document;
};

describe('the numbers of shelves and tables', () => {
  it('are one set for all arrangements: a shelf that stands in one only has its number to itself', () => {
    const { commands, read } = six();
    commands.changePiece('a1', 'shelf-f9', { name: 'Blocks' });
    commands.changePiece('a2', 'shelf-f9', { name: 'Blocks' });
    const room = read();
    expect(numbersOf(room)).toEqual({
      'shelf-a9': '1',
      'shelf-b9': '2',
      'shelf-c9': '3',
      'shelf-d9': '4',
      'shelf-e9': '5',
      'shelf-f9': '6',
    });
    const names = moveNames(room, at(room, 0), at(room, 1), (id) => id);
    expect([names.name('shelf-b9'), names.name('shelf-f9')]).toEqual(['shelf 2', 'shelf 6']);
    expect(names.number('shelf-b9')).toBe('2');
    expect(nextNumber(room, 'shelf')).toBe(7);
  });

  it('stay when a shelf is named, alone or with a figure in its name, and move with nobody else', () => {
    const { commands, read } = createDocument(moveRoom(made(4), []));
    const before = numbersOf(read());
    commands.putAwayPiece('a1', 'shelf-b9');
    commands.changePiece('a1', 'shelf-c9', { name: 'Pouring' });
    commands.changePiece('a1', 'shelf-d9', { name: '10 rods and more' });
    const { 'shelf-b9': _, ...rest } = before;
    expect(numbersOf(read())).toEqual(rest);
  });

  it('stay when a shelf without a number of its own goes, here, with its arrangement, or by a step taken back', () => {
    const nameless = ['Pouring', 'Dressing', 'Tens', 'Reading'].map((name, i) => shelf(`p${'abcd'[i]}`, name));
    const document = createDocument(moveRoom(nameless, [...nameless.slice(1), shelf('pe', 'Late')]));
    const { commands, read, undo } = document;
    expect(numbersOf(read())).toEqual({ pa: '1', pb: '2', pc: '3', pd: '4', pe: '5' });
    commands.putAwayPiece('a1', 'pa');
    expect(numbersOf(read())).toEqual({ pb: '2', pc: '3', pd: '4', pe: '5' });
    commands.removeArrangement('a1');
    expect(numbersOf(read())).toEqual({ pb: '2', pc: '3', pd: '4', pe: '5' });
    undo.takeBack();
    undo.takeBack();
    expect(numbersOf(read())).toEqual({ pa: '1', pb: '2', pc: '3', pd: '4', pe: '5' });
    // A new one that asks for a number that another has gets the next free one.
    const id = commands.addPiece('a2', { kind: 'shelf', name: 'Shelf 3', x: 1, y: 1, width: 900, depth: 320 });
    expect(numbersOf(read())).toEqual({ pa: '1', pb: '2', pc: '3', pd: '4', pe: '5', [id]: '6' });
  });

  it('are given by a name that says one, in every arrangement, as long as no other has it', () => {
    const { commands, read } = six();
    commands.changePiece('a1', 'shelf-f9', { name: 'Shelf 9' });
    expect(pieceNumbers(read()).get('shelf-f9')).toBe('9');
    commands.changePiece('a1', 'shelf-f9', { name: 'Shelf 2' });
    expect(pieceNumbers(read()).get('shelf-f9')).toBe('9');
    expect(pieceNumbers(read()).get('shelf-b9')).toBe('2');
  });

  it('are the same for a thing that got another id in the other arrangement', () => {
    const room = moveRoom(made(2), [shelf('other', 'Shelf 2', { x: 3000 }), shelf('third', 'Shelf 2', { width: 900 })]);
    expect(numbersOf(room)).toEqual({ 'shelf-a9': '1', 'shelf-b9': '2', other: '2', third: '3' });
  });

  it('of the demo are those on the reviewed pictures', () => {
    const room = classroomSchema.parse(demoRoom());
    const shelves = at(room, 0).pieces.filter(({ kind }) => kind === 'shelf');
    expect(shelves.map(({ id }) => pieceNumbers(room).get(id))).toEqual(Array.from({ length: 15 }, (_, i) => String(i + 1)));
    const document = createDocument(room);
    document.commands.changePiece('a1', 'pl3', { name: '' });
    document.commands.putAwayPiece('a1', 'pl1');
    document.commands.putAwayPiece('a2', 'pl1');
    const { pl1: _, ...rest } = numbersOf(room);
    expect(numbersOf(document.read())).toEqual(rest);
  });
});
