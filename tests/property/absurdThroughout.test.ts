import { expect, it } from 'vitest';
import { failuresAmong } from '#tests/support/absurd/watched.ts';
import { patience, runs } from '#tests/support/runs.ts';

// As absurdRooms.test.ts: a file of its own, so that two workers share them.
it('all of it at once, in several arrangements: judged or refused, never a throw', { timeout: patience }, async () => {
  expect(await failuresAmong({ kind: 'throughout', from: 200_001, count: runs(60, 6000), mostMs: 30_000 })).toEqual([]);
});
