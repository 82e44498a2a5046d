// @vitest-environment happy-dom
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { oneStop } from '#client/ui/oneStop.ts';

let stop: (() => void) | undefined;

const one = (id: string): HTMLElement => {
  const found = document.getElementById(id);
  if (!found) throw new Error(`nothing is called ${id}`);
  return found;
};
/** What Tab stops at inside the list, in order. */
const stops = (): string[] =>
  [...one('list').querySelectorAll<HTMLElement>('button:not(:disabled), input')].filter((e) => e.tabIndex === 0).map((e) => e.id);
const press = (key: string, held: KeyboardEventInit = {}): boolean =>
  !(document.activeElement ?? document.body).dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true, ...held }));
/** The ids that keys lead to, one after the other. */
const walk = (...keys: readonly string[]): (string | undefined)[] =>
  keys.map((key) => {
    press(key);
    return document.activeElement?.id;
  });
const settled = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));

beforeEach(() => {
  document.body.innerHTML = `
    <table id="list">
      <thead><tr><th>Material</th></tr></thead>
      <tbody>
        <tr id="head"><th colspan="2">Practical life</th></tr>
        <tr id="row-a"><td><button id="a" aria-pressed="false"></button></td><td><button id="place-a"></button></td></tr>
        <tr id="row-b"><td><button id="b" aria-pressed="false"></button></td><td></td></tr>
        <tr id="row-c"><td><button id="c" aria-pressed="false"></button></td><td><button id="off-c" disabled></button><button id="place-c"></button></td></tr>
        <tr id="row-d"><td><input type="checkbox" id="d"></td><td><input type="text" id="typed"></td></tr>
      </tbody>
    </table>`;
  stop = oneStop(one('list'));
});
afterEach(() => stop?.());

describe('a table that is one stop for Tab', () => {
  it('is stopped at in its first row, and at fields, which have the arrows for themselves', () => {
    expect(stops()).toEqual(['a', 'typed']);
  });

  // Keys of the grid pattern: ARIA Authoring Practices Guide 1.2, "Grid (Interactive Tabular Data and Layout Containers) Pattern".
  it.each([
    [
      'from row to row, past those with nothing to press, to the end and no further',
      'a',
      ['ArrowDown', 'ArrowDown', 'ArrowDown', 'ArrowDown'],
      ['b', 'c', 'd', 'd'],
    ],
    ['back, and stays at the first', 'b', ['ArrowUp', 'ArrowUp'], ['a', 'a']],
    ['along a row, past what is off', 'c', ['ArrowRight', 'ArrowRight', 'ArrowLeft', 'ArrowLeft'], ['place-c', 'place-c', 'c', 'c']],
    [
      'down a column, over a row that is shorter',
      'place-a',
      ['ArrowDown', 'ArrowDown', 'ArrowUp', 'ArrowUp'],
      ['b', 'place-c', 'b', 'place-a'],
    ],
    ['to the ends of a row, then of the table', 'c', ['End', 'Home', 'Home', 'End', 'End'], ['place-c', 'c', 'a', 'place-a', 'd']],
    ['by pages', 'b', ['PageDown', 'PageUp'], ['d', 'a']],
  ])('is walked %s', (_, from, keys, to) => {
    one(from).focus();
    expect(walk(...keys)).toEqual(to);
    expect(stops()).toEqual([to.at(-1), 'typed']);
  });

  it('is walked to its corners with Ctrl', () => {
    one('b').focus();
    press('End', { ctrlKey: true });
    expect(document.activeElement?.id).toBe('d');
    press('Home', { ctrlKey: true });
    expect(document.activeElement?.id).toBe('a');
  });

  it('leaves keys alone that are not for walking', () => {
    one('a').focus();
    const left = [press('Tab'), press('Enter'), press(' '), press('z', { ctrlKey: true }), press('ArrowDown', { shiftKey: true })];
    one('typed').focus();
    expect([...left, press('ArrowDown'), press('Home')]).toEqual(Array(7).fill(false));
    one('a').setAttribute('aria-haspopup', 'menu');
    one('a').focus();
    expect([press('ArrowDown'), press('ArrowUp')]).toEqual([false, true]);
  });

  it('remembers where somebody was', () => {
    one('place-c').focus();
    one('typed').focus();
    one('place-c').blur();
    expect(stops()).toEqual(['place-c', 'typed']);
  });

  it('is stopped at where something was chosen on the drawing, but not while it is walked', async () => {
    one('c').setAttribute('aria-pressed', 'true');
    await settled();
    expect(stops()).toEqual(['c', 'typed']);
    one('a').focus();
    one('b').setAttribute('aria-pressed', 'true');
    await settled();
    expect(stops()).toEqual(['a', 'typed']);
  });

  it('keeps one stop when rows come, go and change', async () => {
    one('row-a').insertAdjacentHTML('beforebegin', '<tr><td><button id="new"></button></td></tr>');
    await settled();
    expect(stops()).toEqual(['a', 'typed']);
    one('row-a').remove();
    await settled();
    expect(stops()).toEqual(['new', 'typed']);
    one('new').setAttribute('disabled', '');
    await settled();
    expect(stops()).toEqual(['b', 'typed']);
    one('c').setAttribute('aria-pressed', 'true');
    one('row-b').remove();
    await settled();
    expect(stops()).toEqual(['c', 'typed']);
  });

  it('is left alone once it is no longer shown', async () => {
    stop?.();
    one('a').focus();
    expect(press('ArrowDown')).toBe(false);
    one('row-a').insertAdjacentHTML('beforebegin', '<tr><td><button id="new"></button></td></tr>');
    await settled();
    expect(one('new').tabIndex).toBe(0);
  });
});

it('goes through groups with a verb in each head, as through one list', () => {
  document.body.innerHTML = `
    <div id="list">
      <fieldset><legend>Number <button id="all-n"></button></legend><ul><li><input type="checkbox" id="n1"></li><li><input type="checkbox" id="n2"></li></ul></fieldset>
      <fieldset><legend>Shape <button id="all-s"></button></legend><ul><li>already here</li><li><input type="checkbox" id="s1"></li></ul></fieldset>
    </div>`;
  stop = oneStop(one('list'));
  expect(stops()).toEqual(['all-n']);
  one('all-n').focus();
  expect(walk('ArrowDown', 'ArrowDown', 'ArrowDown', 'ArrowDown', 'ArrowUp')).toEqual(['n1', 'n2', 'all-s', 's1', 'all-s']);
});
