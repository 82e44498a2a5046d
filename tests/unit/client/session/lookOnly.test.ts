import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { afterEach, expect, it, vi } from 'vitest';
import { WebSocket } from 'ws';
import { LOOKING, mayChange } from '#client/session/lookOnly.ts';
import { type OpenSeams, openSession } from '#client/session/openSession.ts';
import type { Session } from '#client/session/types.ts';
import { openDeviceStore } from '#client/store/deviceStore.ts';
import { viewIdOf } from '#model/document/viewId.ts';
import type { Classroom } from '#model/schema/types.ts';
import { memoryStorage } from '#server/storage/memoryStorage.ts';
import { silentAnalyst, smallStore } from '#tests/support/quietDevice.ts';
import { furnished } from '../../../support/furnished.ts';
import { startServer } from '../../../support/server/startServer.ts';

const ROOM = 'L234567890123456789012';
const LOOK = viewIdOf(ROOM);
const closing: (() => unknown)[] = [];
afterEach(async () => {
  for (const close of closing.splice(0).reverse()) await close();
});
interface Device {
  readonly store: ReturnType<typeof openDeviceStore>;
  readonly storage: ReturnType<typeof smallStore>;
}
let devices = 0;
function device(): Device {
  const store = openDeviceStore({ factory: new IDBFactory(), name: `look-${++devices}` });
  closing.push(() => store.close());
  return { store, storage: smallStore() };
}
async function open(
  id: string,
  on: Device,
  server: string,
  seams: OpenSeams = {},
  start?: Classroom,
): Promise<Session & { said: string[] }> {
  const said: string[] = [];
  const session = await openSession(
    id,
    { analyst: silentAnalyst, person: { name: '', initials: 'LS' }, announce: (text) => said.push(text), ...(start && { start }) },
    { ...on, server, WebSocket: WebSocket as unknown as NonNullable<OpenSeams['WebSocket']>, ...seams },
  );
  closing.push(() => session.close());
  return Object.assign(session, { said });
}
const soon = async (look: () => void): Promise<void> => vi.waitFor(look, { timeout: 10_000, interval: 5 });
const tick = () => new Promise((resolve) => setTimeout(resolve, 5));

it('refuses every command in words, moves nothing on the sheet, and leaves a remark that everybody sees', async () => {
  const server = await startServer();
  closing.push(() => server.close());
  const team = await open(ROOM, device(), server.socket, {}, furnished());
  await soon(() => expect(team.kept().server).toBe('saved'));
  expect(mayChange(team)).toBe(true);

  const on = device();
  const guest = await open(LOOK, on, server.socket, { isForLooking: true });
  expect(guest.classroom()).toEqual(team.classroom());
  expect(mayChange(guest)).toBe(false);
  const before = guest.classroom();
  const { commands } = guest;
  for (const run of [
    () => commands.movePiece('a1', 's1', { x: 1, y: 1 }),
    () => commands.changeClass({ name: 'other' }),
    () => commands.applyEdits('a1', [{ do: 'move-piece', piece: 's1', x: 1, y: 1, rotation: 0 }]),
    () => guest.document.commands.putAwayPiece('a1', 's1'),
    () => commands.setBack(['classroom'], { name: { value: 'other' } }),
  ]) {
    guest.said.length = 0;
    expect(run()).toBe(false);
    // Whatever the verb would say of it is not said.
    guest.announce('Moved.');
    await tick();
    expect(guest.said).toEqual([LOOKING]);
  }
  expect(commands.addArrangement('mine')).toBe('');
  guest.undo.takeBack();
  guest.setView({ preview: { piece: 's1', x: 9, y: 9, rotation: 0 }, finding: 'a' });
  expect(guest.view()).toMatchObject({ preview: null, finding: 'a' });
  expect(guest.classroom()).toBe(before);
  expect(guest.undo.canTakeBack()).toBe(false);

  await soon(() => expect(guest.kept().server).toBe('saved'));
  const id = commands.addRemark({ text: ' too high ', on: 's1', x: 1, y: 2, by: 'LS' });
  expect(guest.kept()).toMatchObject({ server: 'saving', waiting: 1 });
  await soon(() =>
    expect(team.classroom().notes).toContainEqual({ id, on: 's1', x: 1, y: 2, text: 'too high', by: 'LS (visitor)', done: false }),
  );
  await soon(() => expect(guest.kept()).toMatchObject({ server: 'saved', waiting: 0 }));
  expect(guest.classroom().notes).toHaveLength(2);
});

it('knows without the server that it may only look, and sends its remark when the server is back', async () => {
  const storage = memoryStorage();
  const first = await startServer({ storage });
  const team = await open(ROOM, device(), first.socket, {}, furnished());
  await soon(() => expect(team.kept().server).toBe('saved'));
  const on = device();
  // By the id alone, as from the list of classrooms on this device: the server says what it may do.
  const met = await open(LOOK, on, first.socket, { isForLooking: false });
  await soon(() => expect(mayChange(met)).toBe(false));
  await met.close();
  await first.close();

  const away = await open(LOOK, on, first.socket, { isForLooking: false });
  expect(mayChange(away)).toBe(false);
  away.commands.addRemark({ text: 'waits' });
  await tick();
  expect(away.kept()).toMatchObject({ server: 'offline', waiting: 1 });
  expect(away.said.join()).toContain('when the server is in reach');
  await away.close();

  const again = await startServer({ storage, port: first.port });
  closing.push(() => again.close());
  const back = await open(LOOK, on, again.socket, { isForLooking: false });
  await soon(() => expect(team.classroom().notes.map(({ text }) => text)).toContain('waits'));
  await soon(() => expect(back.kept()).toMatchObject({ server: 'saved', waiting: 0 }));
}, 30_000);

it('looks by choice at an address for looking that carries the id to change', async () => {
  const server = await startServer();
  closing.push(() => server.close());
  const session = await open(ROOM, device(), server.socket, { isForLooking: true }, furnished());
  await soon(() => expect(session.kept().server).toBe('saved'));
  expect(session.commands.movePiece('a1', 's1', { x: 1, y: 1 })).toBe(false);
  session.commands.addRemark({ text: 'by itself' });
  expect(session.classroom().notes).toHaveLength(2);
});
