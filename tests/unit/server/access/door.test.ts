import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { viewIdOf } from '#model/document/viewId.ts';
import { isClassroomId } from '#model/document/wire.ts';
import { addressIn, admit, isOwnPage } from '#server/access/door.ts';
import { memoryStorage } from '#server/storage/memoryStorage.ts';

const ROOM = 'E234567890123456789012';

describe('the door', () => {
  it('lets change who has the address, look who has the one for looking', async () => {
    const storage = memoryStorage();
    expect(await admit(ROOM, storage)).toEqual({ classroom: ROOM, mayChange: true });
    await storage.commit([{ classroom: ROOM, update: new Uint8Array([0, 0]) }]);
    expect(await admit(ROOM, storage)).toEqual({ classroom: ROOM, mayChange: true });
    expect(await admit(viewIdOf(ROOM), storage)).toEqual({ classroom: ROOM, mayChange: false });
  });

  it('takes only addresses that nobody guesses', async () => {
    const storage = memoryStorage();
    for (const id of ['', 'demo', 'x'.repeat(21), 'x'.repeat(65), `${'x'.repeat(21)}/`, `${'x'.repeat(22)}\n`, 'ä'.repeat(22)])
      expect([id, await admit(id, storage)]).toEqual([id, null]);
    expect(isClassroomId('0123456789abcdef0123456789abcdef')).toBe(true);
  });

  it('finds the address in a path', () => {
    expect(addressIn(`/sync/${ROOM}?x=1`, '/sync')).toBe(ROOM);
    for (const path of ['/sync', '/sync/', `/sync/${ROOM}/`, `/other/${ROOM}`, `/syncs/${ROOM}`])
      expect(addressIn(path, '/sync')).toBeNull();
  });

  it('keeps other pages out, not programs', () => {
    expect(isOwnPage(undefined, 'a:1', [])).toBe(true);
    expect(isOwnPage('http://a:1', 'a:1', [])).toBe(true);
    expect(isOwnPage('http://b', 'a:1', [])).toBe(false);
    expect(isOwnPage('null', 'a:1', [])).toBe(false);
    expect(isOwnPage('http://b', 'a:1', ['http://b'])).toBe(true);
  });

  it('derives the address for looking by SHA-256, as another implementation does', () => {
    // Source: FIPS 180-4 through Node's crypto module.
    const expected = createHash('sha256').update(`v${ROOM}`).digest().subarray(0, 16).toString('base64url');
    expect(viewIdOf(ROOM)).toBe(expected);
    expect(isClassroomId(expected)).toBe(true);
    expect(viewIdOf(expected)).not.toBe(ROOM);
  });
});
