// @vitest-environment happy-dom
import { afterEach, describe, expect, it } from 'vitest';
import { keptList } from '#client/session/keptList.ts';
import { waitingRemarksOf } from '#client/session/waitingRemarks.ts';

const text = (kept: unknown): string | null => (typeof kept === 'string' ? kept : null);
const add = (one: string) => (list: readonly string[]) => [...list, one];
afterEach(() => localStorage.clear());

describe('a list that two tabs change', () => {
  it('keeps what either adds, and drops what either drops', () => {
    const one = keptList('list', localStorage, text);
    const other = keptList('list', localStorage, text);
    one.change(add('a'));
    other.change(add('b'));
    expect(other.list()).toEqual(['a', 'b']);
    one.change((list) => list.filter((entry) => entry !== 'a'));
    expect(one.list()).toEqual(['b']);
    expect(keptList('list', localStorage, text).list()).toEqual(['b']);
  });

  it('is read again when the other tab wrote, and tells', () => {
    const one = keptList('list', localStorage, text);
    let told = 0;
    one.subscribe(() => told++);
    localStorage.setItem('list', '["x", 7]');
    window.dispatchEvent(new StorageEvent('storage', { key: 'list' }));
    expect([one.list(), told]).toEqual([['x'], 1]);
    one.close();
    window.dispatchEvent(new StorageEvent('storage', { key: 'list' }));
    expect(told).toBe(1);
  });

  it('lies in the page where the device keeps nothing', () => {
    const full = {
      getItem: () => null,
      removeItem: () => undefined,
      setItem: () => {
        throw new DOMException('full', 'QuotaExceededError');
      },
    };
    for (const storage of [full, null]) {
      const list = keptList('list', storage, text);
      list.change(add('a'));
      list.change(add('b'));
      expect(list.list()).toEqual(['a', 'b']);
    }
  });
});

it('remarks of two tabs wait side by side until they have arrived', () => {
  const wish = (id: string) => ({ id, on: null, x: 0, y: 0, text: 'Look', by: '' });
  const one = waitingRemarksOf('room', localStorage);
  const other = waitingRemarksOf('room', localStorage);
  one.add(wish('remark-01'));
  other.add(wish('remark-02'));
  one.arrived(new Set(['remark-01']));
  expect(one.list().map(({ id }) => id)).toEqual(['remark-02']);
  expect(one.arrived(new Set(['remark-01']))).toBe(false);
});
