import { describe, expect, it } from 'vitest';
import { createCommitter } from '#server/sync/committer.ts';
import { heldStorage } from '../../../support/server/heldStorage.ts';

const entry = (classroom: string) => ({ classroom, update: new Uint8Array([0, 0]) });

describe('group commits', () => {
  it('commit one turn together, and the next while waiting for it', async () => {
    const storage = heldStorage();
    const committer = createCommitter(storage, () => undefined);
    const said: string[] = [];
    const add = (name: string) =>
      committer.add({ entries: [entry(name)], done: () => said.push(name), failed: () => said.push(`not ${name}`) });
    storage.mode = 'hold';
    add('a');
    add('b');
    await new Promise((resolve) => setTimeout(resolve, 10));
    add('c');
    expect([storage.waiting(), said]).toEqual([1, []]);
    await storage.release();
    await committer.idle();
    expect(storage.groups).toEqual([2, 1]);
    expect(said).toEqual(['a', 'b', 'c']);
  });

  it('tell everybody in a group that failed, once each, and go on', async () => {
    const storage = heldStorage();
    const failures: unknown[] = [];
    const committer = createCommitter(storage, (error) => failures.push(error));
    const said: string[] = [];
    const add = (name: string) =>
      committer.add({ entries: [entry(name)], done: () => said.push(name), failed: () => said.push(`not ${name}`) });
    storage.mode = 'refuse';
    add('a');
    add('b');
    await committer.idle();
    storage.mode = 'through';
    add('c');
    await committer.idle();
    expect(said).toEqual(['not a', 'not b', 'c']);
    expect(failures).toHaveLength(1);
  });

  it('ask the storage for nothing where there is nothing to write', async () => {
    const storage = heldStorage();
    const committer = createCommitter(storage, () => undefined);
    let isDone = false;
    committer.add({
      entries: [],
      done: () => {
        isDone = true;
      },
      failed: () => undefined,
    });
    await committer.idle();
    expect([isDone, storage.groups]).toEqual([true, []]);
  });
});
