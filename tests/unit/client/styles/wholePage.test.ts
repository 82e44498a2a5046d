import { readdirSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, it } from 'vitest';

const folder = resolve(import.meta.dirname, '../../../../client/styles');

/** Selectors that ask what the whole page, or anything at all, holds. */
const ofWholePage = /(?:^|[\s,>+~(])(?:html|body|:root|\*|:not\()[^\s,{>+~]*:has\(/;

// Measured with the browser's own trace: one such selector had the styles of all 1,360 things of the demo's page worked out
// anew (9 ms) with every row that came or went, and of 6,660 (38 ms) in a room of 400 pieces.
it('no style asks :has() of the whole page', () => {
  const asking = readdirSync(folder)
    .filter((name) => name.endsWith('.css'))
    .flatMap((name) =>
      readFileSync(resolve(folder, name), 'utf8')
        .replace(/\/\*.*?\*\//gs, '')
        .split(/[{}]/)
        .filter((part) => ofWholePage.test(part))
        .map((part) => `${name}: ${part.trim()}`),
    );
  expect(asking).toEqual([]);
  for (const selector of ['body:has(.x) .y', 'html:has(.x)', ':root[data-a]:has(.x)', '.a > :not(:has(.b))', '*:has(.x)'])
    expect(selector).toMatch(ofWholePage);
  expect('.room-strip:has(.x) .y').not.toMatch(ofWholePage);
});
