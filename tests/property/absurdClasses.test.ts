import { expect, it } from 'vitest';
import { failuresAmong } from '#tests/support/absurd/watched.ts';
import { patience, runs } from '#tests/support/runs.ts';

// As absurdRooms.test.ts: a file of its own, so that two workers share them.
it('shelves, things and children that cannot be: judged or refused, never a throw', { timeout: patience }, async () => {
  expect(await failuresAmong({ kind: 'classes', from: 100_001, count: runs(100, 14_000), mostMs: 30_000 })).toEqual([]);
});
