import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { sqliteStorage } from '#server/storage/sqliteStorage.ts';
import { freshFolder } from '../support/server/startServer.ts';

const folder = freshFolder();
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('a SQLite file that may not grow', () => {
  it('refuses the whole commit and keeps what was there', async () => {
    const storage = sqliteStorage(join(folder, 'a.sqlite'), { mostPages: 40 });
    await storage.commit([{ classroom: 'one', update: new Uint8Array([1]) }]);
    const large = new Uint8Array(400_000);
    await expect(
      storage.commit([
        { classroom: 'one', update: new Uint8Array([2]) },
        { classroom: 'one', update: large },
      ]),
    ).rejects.toMatchObject({
      code: 'SQLITE_FULL',
    });
    expect((await storage.load('one')).updates.map((update) => [...update])).toEqual([[1]]);
    await storage.commit([{ classroom: 'one', update: new Uint8Array([3]) }]);
    await expect(storage.replace('one', large, 99)).rejects.toMatchObject({ code: 'SQLITE_FULL' });
    expect((await storage.load('one')).updates.map((update) => [...update])).toEqual([[1], [3]]);
    await storage.close();
  });
});
