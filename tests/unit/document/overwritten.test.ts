import { describe, expect, it } from 'vitest';
import * as Y from 'yjs';
import { createDocument, openDocument } from '#model/document/openDocument.ts';
import { type Overwritten, standingAt, thingAt, watchOverwritten } from '#model/document/overwritten.ts';
import type { ClassroomDocument } from '#model/document/types.ts';
import type { Version } from '#model/document/version.ts';
import { furnished } from '../../support/furnished.ts';

interface Person {
  readonly document: ClassroomDocument;
  readonly told: Overwritten[];
  isConfirmed: boolean;
}

/** Two people who have the same classroom; `first` has the client id that Yjs lets lose, or win. */
function two(order: 'loses' | 'wins' = 'loses'): readonly [Person, Person] {
  const start = createDocument(furnished());
  const state = Y.encodeStateAsUpdate(start.doc);
  const ids = order === 'loses' ? [10, 20] : [20, 10];
  const people = ids.map((id) => {
    const doc = new Y.Doc();
    doc.clientID = id;
    Y.applyUpdate(doc, state);
    const person: Person = { document: openDocument(doc), told: [], isConfirmed: false };
    watchOverwritten(doc, { isMine: (client) => client === id, isConfirmed: () => person.isConfirmed }, (found) =>
      person.told.push(...found),
    );
    return person;
  });
  return people as unknown as readonly [Person, Person];
}
function meet(...people: readonly Person[]): void {
  const states = people.map(({ document }) => Y.encodeStateAsUpdate(document.doc));
  for (const { document } of people) for (const state of states) Y.applyUpdate(document.doc, state);
}
const value = (of: unknown): Version => ({ value: of });
const S1 = ['arrangements', 'a1', 'pieces', 's1'];

describe('what a merge overwrites', () => {
  it('is told to the one who loses, with both versions, and to nobody else', () => {
    for (const order of ['loses', 'wins'] as const) {
      const [first, second] = two(order);
      first.document.commands.movePiece('a1', 's1', { x: 1000, y: 300 });
      second.document.commands.movePiece('a1', 's1', { x: 2000, y: 200 });
      meet(first, second);
      const [loser, winner] = order === 'loses' ? [first, second] : [second, first];
      expect(first.document.read()).toEqual(second.document.read());
      expect(winner.told).toEqual([]);
      const mine = loser === first ? { x: 1000, y: 300 } : { x: 2000, y: 200 };
      const theirs = loser === first ? { x: 2000, y: 200 } : { x: 1000, y: 300 };
      expect(loser.told).toEqual([
        {
          path: S1,
          by: winner.document.doc.clientID,
          fields: { x: { mine: value(mine.x), theirs: value(theirs.x) }, y: { mine: value(mine.y), theirs: value(theirs.y) } },
        },
      ]);
    }
  });

  it('is none when they had seen it, however late it comes', () => {
    const [first, second] = two();
    first.document.commands.movePiece('a1', 's1', { x: 1000, y: 300 });
    meet(first, second);
    second.document.commands.movePiece('a1', 's1', { x: 2000, y: 200 });
    second.document.commands.movePiece('a1', 's1', { x: 2100, y: 200 });
    meet(first, second);
    expect(first.told).toEqual([]);
    expect(second.told).toEqual([]);
  });

  it('is none when two change two fields of one thing, or say the same', () => {
    const [first, second] = two();
    first.document.commands.changePiece('a1', 's1', { name: 'Blocks', height: 720 });
    second.document.commands.changePiece('a1', 's1', { width: 1100, height: 720 });
    meet(first, second);
    expect([...first.told, ...second.told]).toEqual([]);
  });

  it('tells the last of several writes here against the last of several there', () => {
    const [first, second] = two();
    for (const x of [1000, 1100, 1200]) first.document.commands.movePiece('a1', 's1', { x, y: 200 });
    for (const x of [1900, 2000]) second.document.commands.movePiece('a1', 's1', { x, y: 200 });
    meet(first, second);
    expect(first.told).toMatchObject([{ fields: { x: { mine: value(1200), theirs: value(2000) } } }]);
  });

  it('has both places of a tray that two people put somewhere: moved, and from the table', () => {
    const [first, second] = two();
    const place = { side: 'front', y: 0, turned: false } as const;
    for (const { document } of [first, second]) document.commands.putAway('a1', 'm2');
    meet(first, second);
    first.document.commands.place('a1', { ...place, material: 'm1', piece: 's1', level: 'l2', x: 10 });
    second.document.commands.place('a1', { ...place, material: 'm1', piece: 's2', level: 'l1', x: 20 });
    first.document.commands.place('a1', { ...place, material: 'm2', piece: 's1', level: 'l1', x: 30 });
    second.document.commands.place('a1', { ...place, material: 'm2', piece: 's2', level: 'l1', x: 40 });
    meet(first, second);
    expect(first.document.read().arrangements[0]?.placements.map(({ material, piece }) => [material, piece])).toEqual([
      ['m1', 's2'],
      ['m2', 's2'],
    ]);
    const told = Object.fromEntries(first.told.map(({ path, fields }) => [path.join('/'), fields]));
    expect(told['arrangements/a1/placements/m1']).toMatchObject({ piece: { mine: value('s1'), theirs: value('s2') } });
    expect(told['arrangements/a1/placements']).toMatchObject({
      m2: { mine: { map: { piece: value('s1'), x: value(30) } }, theirs: { map: { piece: value('s2'), x: value(40) } } },
    });

    // Mine again, one step, and back to theirs.
    const fields = told['arrangements/a1/placements'];
    const { commands, undo, read } = first.document;
    expect(commands.setBack(['arrangements', 'a1', 'placements'], { m2: fields?.m2?.mine ?? value(null) })).toBe(true);
    expect(read().arrangements[0]?.placements[1]).toMatchObject({ material: 'm2', piece: 's1', level: 'l1', x: 30 });
    undo.takeBack();
    expect(read().arrangements[0]?.placements[1]).toMatchObject({ material: 'm2', piece: 's2', x: 40 });
  });

  it('tells that a thing was taken away that nobody else had seen changed, and it can be put back whole', () => {
    const [first, second] = two();
    first.document.commands.movePiece('a1', 's1', { x: 1000, y: 300 });
    second.document.commands.putAwayPiece('a1', 's1');
    meet(first, second);
    expect(first.told).toMatchObject([{ path: ['arrangements', 'a1', 'pieces'], by: null, fields: { s1: { theirs: null } } }]);
    const mine = first.told[0]?.fields.s1?.mine;
    if (!mine) throw new Error('nothing was told');
    first.document.commands.setBack(['arrangements', 'a1', 'pieces'], { s1: mine });
    const before = furnished().arrangements[0];
    const after = first.document.read().arrangements[0];
    expect(after?.pieces.find(({ id }) => id === 's1')).toEqual({ ...before?.pieces[0], x: 1000, y: 300 });
    // The trays on it stand there again.
    expect(after?.placements).toEqual(before?.placements);
    first.document.undo.takeBack();
    expect(first.document.read().arrangements[0]?.pieces.some(({ id }) => id === 's1')).toBe(false);
  });

  it('is none when it was taken away by somebody who could have seen the change', () => {
    const [first, second] = two();
    first.document.commands.movePiece('a1', 's1', { x: 1000, y: 300 });
    meet(first, second);
    first.isConfirmed = true;
    second.document.commands.putAwayPiece('a1', 's1');
    meet(first, second);
    expect(first.told).toEqual([]);
  });

  it('names corners by their id and settings by their keys', () => {
    const [first, second] = two();
    const corner = furnished().room.corners[2];
    if (!corner) throw new Error('the room has corners');
    first.document.commands.moveCorner(corner.id, { x: 7000, y: 5000 });
    second.document.commands.moveCorner(corner.id, { x: 7500, y: 5500 });
    first.document.commands.changeClass({ name: 'Maple', display: { ...furnished().display, units: 'imperial' } });
    second.document.commands.changeClass({ name: 'Birch' });
    meet(first, second);
    expect(first.told.map(({ path }) => path)).toEqual(expect.arrayContaining([['corners', corner.id], ['classroom']]));
    expect(thingAt(first.document.doc, ['corners', corner.id])?.get('x')).toBe(7500);
    expect(first.document.commands.setBack(['corners', corner.id], { x: value(7000), y: value(5000) })).toBe(true);
    expect(first.document.read().room.corners[2]).toMatchObject({ x: 7000, y: 5000 });
    expect(first.document.commands.setBack(['corners', 'gone'], { x: value(1) })).toBe(false);
  });

  it('what stands under a key, and who wrote it, however many steps later', () => {
    const [first, second] = two();
    for (const x of [1900, 2000, 2100]) second.document.commands.movePiece('a1', 's1', { x, y: 200 });
    meet(first, second);
    const { doc } = first.document;
    expect(standingAt(doc, S1, 'x')).toEqual({ version: value(2100), by: 20 });
    expect(standingAt(doc, S1, 'never')).toBeNull();
    expect(standingAt(doc, ['arrangements', 'a1', 'pieces', 'gone'], 'x')).toBeNull();
    second.document.commands.putAwayPiece('a1', 's1');
    meet(first, second);
    expect(standingAt(doc, ['arrangements', 'a1', 'pieces'], 's1')?.version).toBeNull();
  });
});
