import { expect, it } from 'vitest';
import { LONGEST_REMARK, readRemarkWish, visitorName } from '#model/document/remarkWish.ts';

const wish = { id: 'n-abcdefgh', on: 's1', x: 10, y: 20, text: 'look at the lowest board', by: 'RT' };

it('reads a remark, and takes along nothing else', () => {
  expect(readRemarkWish(JSON.stringify(wish))).toEqual(wish);
  expect(readRemarkWish(JSON.stringify({ ...wish, done: true, more: 1 }))).toEqual(wish);
  expect(readRemarkWish(JSON.stringify({ ...wish, on: null, text: '  a ' }))).toEqual({ ...wish, on: null, text: 'a' });
});

it('says of a name that a visitor gave it', () => {
  expect(['RT', ' RT ', ''].map(visitorName)).toEqual(['RT (visitor)', 'RT (visitor)', 'visitor']);
});

it.each([
  '',
  'null',
  '[]',
  '{"text":"a"}',
  JSON.stringify({ ...wish, id: '__proto__' }),
  JSON.stringify({ ...wish, id: 'a.b.c.d.e.f' }),
  JSON.stringify({ ...wish, text: ' ' }),
  JSON.stringify({ ...wish, text: 'x'.repeat(LONGEST_REMARK + 1) }),
  JSON.stringify({ ...wish, x: 1e12 }),
  JSON.stringify({ ...wish, by: 7 }),
])('%j is none', (json) => {
  expect(readRemarkWish(json)).toBeNull();
});
