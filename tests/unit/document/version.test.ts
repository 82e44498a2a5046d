import { expect, it } from 'vitest';
import * as Y from 'yjs';
import { versionOf, writeVersions } from '#model/document/version.ts';

it('reads what a thing held as it is deleted, without what was deleted before, and writes it again', () => {
  const doc = new Y.Doc();
  const root = doc.getMap<Y.Map<unknown>>('root');
  const thing = new Y.Map<unknown>([
    ['name', 'first'],
    ['size', 7],
    ['gone', true],
    ['~order', 3],
  ]);
  thing.set('inner', new Y.Map([['deep', [1, { a: null }]]]));
  root.set('thing', thing);
  thing.set('name', 'second');
  thing.delete('gone');

  let version: unknown;
  doc.on('afterTransaction', (transaction: Y.Transaction) => {
    const item = root._map.get('thing');
    if (item?.deleted && !version) version = versionOf(item, transaction);
  });
  root.delete('thing');
  const expected = {
    map: {
      name: { value: 'second' },
      size: { value: 7 },
      '~order': { value: 3 },
      inner: { map: { deep: { value: [1, { a: null }] } } },
    },
  };
  expect(version).toEqual(expected);

  doc.transact(() => writeVersions(root as Y.Map<unknown>, { thing: expected }));
  expect(root.get('thing')?.toJSON()).toEqual({ name: 'second', size: 7, '~order': 3, inner: { deep: [1, { a: null }] } });
  // Into a thing that is there: what the version does not name stays, undefined takes a key out.
  doc.transact(() => writeVersions(root as Y.Map<unknown>, { thing: { map: { size: { value: 8 }, name: { value: undefined } } } }));
  expect(root.get('thing')?.toJSON()).toEqual({ size: 8, '~order': 3, inner: { deep: [1, { a: null }] } });
});

it('leaves lists out', () => {
  const doc = new Y.Doc();
  const root = doc.getMap<unknown>('root');
  let seen: unknown = 'not looked';
  doc.on('afterTransaction', (transaction: Y.Transaction) => {
    const item = root._map.get('list');
    if (item) seen = versionOf(item, transaction);
  });
  root.set('list', Y.Array.from([1, 2]));
  expect(seen).toBeNull();
});
