import { beforeEach, expect, it } from 'vitest';
import * as Y from 'yjs';
import { keepConflicts } from '#client/session/conflicts.ts';
import { keepBoth, keepMine } from '#client/states/settleConflict.ts';
import { openDocument } from '#model/document/openDocument.ts';
import { type PlanSession, planSession } from '../plan/planSession.ts';

let session: PlanSession;
let conflicts: ReturnType<typeof keepConflicts>;
const moved = (arrangement: string, piece: string, x: number) => ({
  path: ['arrangements', arrangement, 'pieces', piece],
  fields: { x: { mine: { value: x }, theirs: { value: 1800 } } },
  by: null,
});

beforeEach(() => {
  session = planSession({ pieces: [{ id: 's1', kind: 'shelf', name: 'Shelf 1', x: 1800, y: 300, width: 1200, depth: 320 }] });
  conflicts = keepConflicts('room', session.document.doc, null);
});

it('what could not be put back stays listed, the others are settled', () => {
  conflicts.add([moved('a1', 's1', 1000), moved('a1', 'gone', 2000)] as never, () => '');
  keepMine(session, conflicts.list());
  expect(session.arrangement().pieces[0]?.x).toBe(1000);
  expect(conflicts.list().map(({ path }) => path[3])).toEqual(['gone']);
  expect(session.said.at(-1)).toContain('It stays listed');
});

it('a second one of a shelf has a number of its own', () => {
  conflicts.add([moved('a1', 's1', 1000)] as never, () => '');
  const [conflict] = conflicts.list();
  if (conflict) keepBoth(session, conflict);
  expect(session.arrangement().pieces.map(({ name, x }) => [name, x])).toEqual([
    ['Shelf 1', 1800],
    ['Shelf 2', 1000],
  ]);
});

it('says what stands now when they went on after the step that was overwritten first', () => {
  const { doc, commands } = session.document;
  const isMine = (client: number): boolean => client === doc.clientID;
  const follow = (): void => conflicts.follow(isMine, () => 'RT');
  const theirs = new Y.Doc();
  const theyMove = (x: number, y: number): void => {
    Y.applyUpdate(theirs, Y.encodeStateAsUpdate(doc));
    openDocument(theirs).commands.movePiece('a1', 's1', { x, y });
    Y.applyUpdate(doc, Y.encodeStateAsUpdate(theirs));
    follow();
  };
  conflicts.add([moved('a1', 's1', 1000), moved('a1', 'gone', 2000)] as never, () => '');
  theyMove(1700, 300);
  theyMove(1650, 300);
  expect(conflicts.list()[0]).toMatchObject({
    by: 'RT',
    client: theirs.clientID,
    fields: { x: { mine: { value: 1000 }, theirs: { value: 1650 } } },
  });
  // Mine, knowingly: it is not theirs that stands.
  commands.movePiece('a1', 's1', { x: 900, y: 300 });
  follow();
  expect(conflicts.list()[0]?.fields.x?.theirs).toEqual({ value: 1650 });
  // They come to what I had: nothing is left to decide of it.
  theyMove(1000, 300);
  expect(conflicts.list().map(({ path }) => path[3])).toEqual(['gone']);
});
