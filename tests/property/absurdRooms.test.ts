import { expect, it } from 'vitest';
import { failuresAmong } from '#tests/support/absurd/watched.ts';
import { patience, runs } from '#tests/support/runs.ts';

// Files made by fast-check, a general-purpose library for properties; it also makes a failing one smaller.
it('walls, doors and furniture that cannot be: judged or refused, never a throw', { timeout: patience }, async () => {
  expect(await failuresAmong({ kind: 'rooms', from: 1, count: runs(100, 10_000), mostMs: 30_000 })).toEqual([]);
});
