import { beforeAll, describe, expect, it } from 'vitest';
import { type FirstLoad, firstLoadBytes } from '#tests/bench/firstLoad.ts';
import { builtPage } from '#tests/support/builtPage.ts';

/** Gzipped bytes that a tablet fetches for the whole Room sheet at most, without the checks' own file: our own goal. */
const MOST = 350_000;

describe('what a tablet fetches first', () => {
  let load: FirstLoad;
  beforeAll(async () => {
    await builtPage();
    load = await firstLoadBytes();
  }, 240_000);

  it('is at most 350 kB for the whole Room sheet with its front and trays', () => {
    expect(load.inAll).toBeLessThanOrEqual(MOST);
    // It was the whole sheet that came, and not a page that fell over.
    expect(load.inAll).toBeGreaterThan(MOST / 2);
    expect(load.worker).toBeGreaterThan(50_000);
    expect(load.demo).toBeGreaterThan(5_000);
  });
});
