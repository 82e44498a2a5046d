import { expect, it } from 'vitest';
import { createDocument } from '#model/document/openDocument.ts';
import { pictureOf } from '#model/schema/picture.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';

const source = 'data:image/png;base64,iVBORw0KGgo=';
const plan = { source, width: 800, height: 600, x: 3000, y: 2500, scale: 10 };

it('is a picture with its defaults', () => {
  expect(pictureOf(plan)).toEqual({ ...plan, rotation: 0, fade: 50, shown: true });
});

it.each([
  ['no picture', null],
  ['a word', 'plan.png'],
  ['one that is fetched from elsewhere', { ...plan, source: 'https://example.org/plan.png' }],
  ['one that may hold code', { ...plan, source: 'data:image/svg+xml;base64,PHN2Zz4=' }],
  ['one without a scale', { ...plan, scale: 0 }],
])('is not drawn: %s', (_, value) => expect(pictureOf(value)).toBeNull());

it('a change of one figure does not send the picture again', () => {
  const one = createDocument(plainRoom());
  one.commands.changeRoom({ picture: { ...plan, source: `data:image/png;base64,${'A'.repeat(200_000)}` } });
  const sent: number[] = [];
  one.doc.on('update', (update: Uint8Array) => sent.push(update.byteLength));
  const before = pictureOf(one.read().room.picture);
  if (!before) throw new Error('the picture is gone');
  one.commands.changeRoom({ picture: { ...before, fade: 80 } });
  expect(pictureOf(one.read().room.picture)).toEqual({ ...before, fade: 80 });
  expect(Math.max(...sent)).toBeLessThan(200);
});

it('is taken back and comes again', () => {
  const one = createDocument(plainRoom());
  one.commands.changeRoom({ picture: plan });
  one.commands.changeRoom({ picture: null });
  expect(one.read().room.picture).toBeNull();
  one.undo.takeBack();
  expect(pictureOf(one.read().room.picture)?.source).toBe(source);
  one.undo.takeBack();
  expect(one.read().room.picture).toBeNull();
});

it('what somebody else put there is kept as it is', () => {
  const one = createDocument(plainRoom({ room: { picture: ['an older', { note: 1 }] } }));
  expect(one.read().room.picture).toEqual(['an older', { note: 1 }]);
});
