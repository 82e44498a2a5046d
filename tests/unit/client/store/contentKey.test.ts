import { createHash } from 'node:crypto';
import { expect, it } from 'vitest';
import { contentKey } from '#client/store/contentKey.ts';

it('is the SHA-256 of the text, as Node reckons it', () => {
  for (const text of ['', 'abc', 'Mörike 東', 'x'.repeat(100_000)])
    expect(contentKey(text)).toBe(createHash('sha256').update(JSON.stringify(text)).digest('hex'));
});

it('is the same whatever the order of the fields, and another for another value', () => {
  expect(contentKey([{ a: 1, b: [{ c: 2, d: 3 }] }])).toBe(contentKey([{ b: [{ d: 3, c: 2 }], a: 1 }]));
  expect(contentKey([{ a: 1 }])).not.toBe(contentKey([{ a: 2 }]));
  expect(contentKey([1, 2])).not.toBe(contentKey([2, 1]));
});
