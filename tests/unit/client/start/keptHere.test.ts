import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { describe, expect, it } from 'vitest';
import { openProofMemory } from '#client/mats/proofMemory.ts';
import { forgetHere, roomsKeptHere } from '#client/start/keptHere.ts';
import { openDeviceStore } from '#client/store/deviceStore.ts';
import { createDocument } from '#model/document/openDocument.ts';
import { furnished } from '../../../support/furnished.ts';

/** A device on which classrooms were opened one after the other. */
async function deviceWith(...ids: string[]) {
  const factory = new IDBFactory();
  let time = 1_000;
  const open = () => openDeviceStore({ factory, name: 'kept-here', now: () => time++ });
  for (const id of ids) {
    const store = open();
    const keeping = store.keep(id, createDocument(furnished()).doc);
    await keeping.loaded;
    await keeping.close();
    await store.close();
  }
  return open;
}

describe('what this device keeps', () => {
  it('is listed last opened first, by the name in the classroom', async () => {
    const open = await deviceWith('a', 'b');
    const rooms = await roomsKeptHere(open);
    expect(rooms.map(({ id }) => id)).toEqual(['b', 'a']);
    expect(rooms[0]?.name).toBe(furnished().name);
  });

  it('is gone once it is forgotten, and nothing else is', async () => {
    const open = await deviceWith('a', 'b');
    const proofs = openProofMemory();
    const tile = { width: 1200, depth: 750, gap: 300 };
    const mats = { count: 0, upperBound: 0, proven: true, places: [], tile };
    for (const id of ['a', 'b']) await proofs.keep(id, { grounds: 'g', mats, end: 'done', at: 1 });
    await forgetHere('b', open);
    expect([(await proofs.all('a')).length, (await proofs.all('b')).length]).toEqual([1, 0]);
    expect((await roomsKeptHere(open)).map(({ id }) => id)).toEqual(['a']);
  });

  it('is no trouble in a browser that has no database', async () => {
    const refuse = () =>
      openDeviceStore({
        factory: {
          open: () => {
            throw new DOMException('refused', 'SecurityError');
          },
        } as unknown as IDBFactory,
      });
    expect(await roomsKeptHere(refuse)).toEqual([]);
    await expect(forgetHere('a', refuse)).rejects.toThrow('refused');
  });
});
