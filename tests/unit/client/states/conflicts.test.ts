import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { afterEach, expect, it, vi } from 'vitest';
import { WebSocket } from 'ws';
import { conflictsOf } from '#client/session/conflicts.ts';
import { type OpenSeams, openSession } from '#client/session/openSession.ts';
import type { Session } from '#client/session/types.ts';
import { conflictsOnPlan } from '#client/states/drawConflicts.ts';
import { sayConflict } from '#client/states/sayConflict.ts';
import { canKeepBoth, keepBoth, keepMine, keepTheirs } from '#client/states/settleConflict.ts';
import { openDeviceStore } from '#client/store/deviceStore.ts';
import type { Classroom } from '#model/schema/types.ts';
import { memoryStorage } from '#server/storage/memoryStorage.ts';
import { silentAnalyst, smallStore } from '#tests/support/quietDevice.ts';
import { furnished } from '../../../support/furnished.ts';
import { startServer } from '../../../support/server/startServer.ts';

const ROOM = 'C234567890123456789012';
const closing: (() => unknown)[] = [];
afterEach(async () => {
  for (const close of closing.splice(0).reverse()) await close();
});
let devices = 0;
function device() {
  // Of one name they would be tabs of one browser, which talk without a server.
  const store = openDeviceStore({ factory: new IDBFactory(), name: `conflict-${++devices}` });
  closing.push(() => store.close());
  return { store, storage: smallStore() };
}
async function open(on: ReturnType<typeof device>, server: string, initials: string, start?: Classroom): Promise<Session> {
  const session = await openSession(
    ROOM,
    { analyst: silentAnalyst, person: { name: '', initials }, announce: () => undefined, ...(start && { start }) },
    { ...on, server, WebSocket: WebSocket as unknown as NonNullable<OpenSeams['WebSocket']> },
  );
  closing.push(() => session.close());
  return session;
}
const soon = async (look: () => void): Promise<void> => vi.waitFor(look, { timeout: 12_000, interval: 5 });
const saved = (session: Session) => soon(() => expect(session.kept()).toMatchObject({ server: 'saved', waiting: 0 }));
const pieceIn = (session: Session, id: string) => session.arrangement().pieces.find((piece) => piece.id === id);

/** Both change without the server, then it is back. @returns the one that was overwritten first, with what she wrote. */
async function apart(changeOne: (session: Session) => void, changeOther: (session: Session) => void) {
  const storage = memoryStorage();
  const first = await startServer({ storage });
  const devices = [device(), device()] as const;
  const one = await open(devices[0], first.socket, 'MK', furnished());
  await saved(one);
  const other = await open(devices[1], first.socket, 'RT');
  await saved(other);
  await first.close();
  await soon(() => expect([one.kept().server, other.kept().server]).toEqual(['offline', 'offline']));
  changeOne(one);
  changeOther(other);
  const again = await startServer({ storage, port: first.port });
  closing.push(() => again.close());
  await saved(one);
  await saved(other);
  await soon(() => expect(one.classroom()).toEqual(other.classroom()));
  const isOne = conflictsOf(one).list().length > 0;
  return { loser: isOne ? one : other, winner: isOne ? other : one, on: devices[isOne ? 0 : 1], server: first.socket };
}

it('a shelf moved by two: both versions in words and on the plan; mine, theirs and both are each one step', async () => {
  const { loser, winner, on, server } = await apart(
    (session) => session.commands.movePiece('a1', 's1', { x: 1000, y: 300 }),
    (session) => session.commands.movePiece('a1', 's1', { x: 1800, y: 500 }),
  );
  const [conflict, ...others] = conflictsOf(loser).list();
  if (!conflict) throw new Error('nobody was told');
  expect(others).toEqual([]);
  expect(conflictsOf(winner).list()).toEqual([]);
  const isMK = conflict.by === 'RT';
  expect(['MK', 'RT']).toContain(conflict.by);
  const places = ['at B1 (1.00 m across, 0.30 m down)', 'at B1 (1.80 m across, 0.50 m down)'];
  const { title, mine, theirs } = sayConflict(loser, conflict);
  expect(title).toContain(`Shelf 1`);
  expect(title).toContain(`changed here and by ${conflict.by}`);
  expect([mine, theirs]).toEqual(isMK ? places : [...places].reverse());
  const drawn = conflictsOnPlan(loser).get('s1');
  expect(drawn?.by).toBe(conflict.by);
  expect([drawn?.mine.piece?.x, drawn?.theirs.piece?.x]).toEqual(isMK ? [1000, 1800] : [1800, 1000]);

  const theirX = pieceIn(loser, 's1')?.x;
  const myX = isMK ? 1000 : 1800;
  expect(canKeepBoth(conflict)).toBe(true);
  keepBoth(loser, conflict);
  expect(conflictsOf(loser).list()).toEqual([]);
  expect(
    loser
      .arrangement()
      .pieces.filter(({ kind }) => kind === 'shelf')
      .map(({ x }) => x),
  ).toEqual([theirX, 2500, myX]);
  expect(loser.arrangement().pieces.at(-1)).toEqual({
    ...pieceIn(loser, 's1'),
    id: expect.not.stringMatching(/^s1$/),
    name: 'Shelf 3',
    x: myX,
    y: isMK ? 300 : 500,
  });
  loser.undo.takeBack();
  expect(loser.arrangement().pieces).toHaveLength(3);

  keepMine(loser, [conflict]);
  expect(pieceIn(loser, 's1')?.x).toBe(myX);
  await soon(() => expect(pieceIn(winner, 's1')?.x).toBe(myX));
  // Written over knowingly: the other one is not asked again.
  expect(conflictsOf(winner).list()).toEqual([]);
  loser.undo.takeBack();
  expect(pieceIn(loser, 's1')?.x).toBe(theirX);
  const step = loser.classroom();
  keepTheirs(loser, [conflict]);
  expect(loser.classroom()).toBe(step);
  void on;
  void server;
}, 40_000);

it('a tray taken from the table by two: one place stands, the other is offered, also after the page was closed', async () => {
  const place = { material: 'm2', side: 'front', level: 'l1', y: 0, turned: false } as const;
  const { loser, on, server } = await apart(
    (session) => session.commands.place('a1', { ...place, piece: 's1', x: 700 }),
    (session) => session.commands.place('a1', { ...place, piece: 's2', x: 40 }),
  );
  const [before] = conflictsOf(loser).list();
  if (!before) throw new Error('nobody was told');
  await loser.close();
  const again = await open(on, server, 'MK');
  const [conflict] = conflictsOf(again).list();
  expect(conflict).toEqual(before);
  if (!conflict) return;
  expect(canKeepBoth(conflict)).toBe(false);
  const words = sayConflict(again, conflict);
  expect(words.title).toContain('The tray Rods');
  expect([words.mine, words.theirs].sort()).toEqual([
    'on shelf 1, in “As it stands”, board 1 from the top, 0.70 m from its left end',
    'on shelf 2, in “As it stands”, board 1 from the top, 0.04 m from its left end',
  ]);
  const stands = again.arrangement().placements.find(({ material }) => material === 'm2')?.piece;
  keepMine(again, [conflict]);
  expect(again.arrangement().placements.find(({ material }) => material === 'm2')?.piece).toBe(stands === 's1' ? 's2' : 's1');
  again.undo.takeBack();
  expect(again.arrangement().placements.find(({ material }) => material === 'm2')?.piece).toBe(stands);
}, 40_000);
