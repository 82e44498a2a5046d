// @vitest-environment happy-dom
import { act } from 'react';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { changeWall, draftOf } from '#client/survey/draft.ts';
import { keepDraft, readKeptDraft } from '#client/survey/keptDraft.ts';
import { WalkDialog } from '#client/survey/WalkDialog.tsx';
import { plainRoom } from '#tests/support/plainRoom.ts';

const { room } = plainRoom();
let root: Root;

const open = (): void =>
  act(() =>
    root.render(
      <WalkDialog room={room} units="metric" keptAs="class" isFresh={false} misfitsOf={() => []} onPut={() => {}} onClose={() => {}} />,
    ),
  );
function press(text: string): void {
  const button = [...document.querySelectorAll('button')].find((one) => one.textContent === text);
  if (!button) throw new Error(`no "${text}"`);
  act(() => button.click());
}
const firstLength = (): number | null | undefined => readKeptDraft('class')?.walls[0]?.length;

beforeEach(() => {
  Object.assign(globalThis, { IS_REACT_ACT_ENVIRONMENT: true });
  localStorage.clear();
  const page = document.createElement('div');
  document.body.append(page);
  root = createRoot(page);
});

afterEach(() => {
  act(() => root.unmount());
  document.body.replaceChildren();
  localStorage.clear();
});

it('lays a typed walk aside when another begins, and takes it back', () => {
  keepDraft('class', changeWall('c1', { length: 6123 })(draftOf(room)));
  open();
  press('Begin from the sheet instead');
  expect(document.body.textContent).toContain('The walk you typed before is laid aside.');
  press('Take it back');
  expect(firstLength()).toBe(6123);
  press('Begin with an empty walk');
  expect(firstLength()).not.toBe(6123);
  press('Take it back');
  expect(firstLength()).toBe(6123);
});

it('keeps the one laid aside until a walk is put on the sheet', () => {
  keepDraft('class', changeWall('c1', { length: 6123 })(draftOf(room)));
  open();
  press('Begin from the sheet instead');
  act(() => root.unmount());
  root = createRoot(document.body);
  open();
  press('Take it back');
  expect(firstLength()).toBe(6123);
  press('Put it on the sheet');
  expect(localStorage.length).toBe(0);
});

/** One wall as somebody types it, Enter after it. */
function typeWall(length: string, bend?: string): void {
  const row = [...document.querySelectorAll('tr[data-wall]')].find((one) => one.contains(document.activeElement));
  const field = row?.querySelector('input');
  if (!row || !field) throw new Error('no wall is being typed');
  act(() => {
    Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')?.set?.call(field, length);
    field.dispatchEvent(new Event('input', { bubbles: true }));
  });
  const turn = row.querySelector('select');
  if (bend && turn)
    act(() => {
      turn.value = bend;
      turn.dispatchEvent(new Event('change', { bubbles: true }));
    });
  act(() => {
    field.dispatchEvent(new KeyboardEvent('keydown', { key: 'Enter', bubbles: true, cancelable: true }));
  });
}
const rows = (): number => document.querySelectorAll('tr[data-wall]').length;

it('a left turn forgotten: after the fourth right turn Enter goes on, says how far it is open and puts nothing on the sheet', () => {
  open();
  press('Begin with an empty walk');
  act(() => document.querySelector<HTMLElement>('tr[data-wall] input')?.focus());
  for (const wall of ['9.00', '4.20', '4.70', '2.60']) typeWall(wall);
  expect(rows()).toBe(5);
  expect(document.activeElement).toBe(document.querySelectorAll('tr[data-wall]')[4]?.querySelector('input'));
  expect(document.querySelector('.walk-said')?.textContent).toMatch(/^4\.\d\d m open: /);
  expect(document.querySelector('.trouble-text')?.textContent).toContain('go on with wall 5');
  // Enter in the empty row does not put it on the sheet either.
  act(() => {
    document.activeElement?.dispatchEvent(new KeyboardEvent('keydown', { key: 'Enter', bubbles: true, cancelable: true }));
  });
  expect(document.activeElement?.tagName).toBe('INPUT');
  typeWall('4.30');
  typeWall('6.80');
  expect(readKeptDraft('class')?.walls.map(({ length }) => length)).toEqual([9000, 4200, 4700, 2600, 4300, 6800, null]);
});

it('a walk that closes as a tape does goes on to the buttons; the corners bear their numbers for the diagonals', () => {
  open();
  press('Begin with an empty walk');
  act(() => document.querySelector<HTMLElement>('tr[data-wall] input')?.focus());
  typeWall('9.00');
  typeWall('4.20');
  typeWall('4.70', 'left');
  for (const wall of ['2.60', '4.30', '6.81']) typeWall(wall);
  expect(rows()).toBe(6);
  expect(document.activeElement?.tagName).toBe('BUTTON');
  expect(document.querySelectorAll('.walk-corner')).toHaveLength(0);
  const diagonals = [...document.querySelectorAll('label')].find(({ textContent }) => textContent === 'Diagonals')?.querySelector('input');
  act(() => diagonals?.click());
  expect([...document.querySelectorAll('.walk-corner')].map(({ textContent }) => textContent)).toEqual(['1', '2', '3', '4', '5', '6']);
});

it('a wall is chosen by a press in the picture or from the list, and a new door, window or column comes to it', () => {
  open();
  const part = (name: string) =>
    act(() =>
      [...document.querySelectorAll('label')]
        .find(({ textContent }) => textContent === name)
        ?.querySelector('input')
        ?.click(),
    );
  part('Doors, windows');
  const pressWall = (corner: string) =>
    act(
      () => void document.querySelector(`.walk-picture [data-wall="${corner}"]`)?.dispatchEvent(new MouseEvent('click', { bubbles: true })),
    );
  const added = () => readKeptDraft('class')?.openings.findLast(({ isNew }) => isNew)?.wall;
  pressWall('c3');
  press('Add a door on wall 3');
  expect(added()).toBe('c3');

  const chooseFrom = (label: string, corner: string) => {
    const field = [...document.querySelectorAll('.walk-add .field')].find((one) => one.querySelector('label')?.textContent === label);
    const list = field?.querySelector('select');
    if (!list) throw new Error(`no list "${label}"`);
    act(() => {
      list.value = corner;
      list.dispatchEvent(new Event('change', { bubbles: true }));
    });
  };
  chooseFrom('New ones on', 'c2');
  expect(document.querySelector('.walk-number.current')?.textContent).toMatch(/^2: /);
  press('Add a window on wall 2');
  expect(added()).toBe('c2');

  part('In the room');
  chooseFrom('At', 'c4');
  press('Add it at wall 4');
  expect(readKeptDraft('class')?.fixtures.at(-1)?.wall).toBe('c4');

  // Among the walls the keys go to the row of the wall that is pressed.
  part('Walls');
  pressWall('c3');
  expect(document.activeElement?.closest('tr')?.dataset.wall).toBe('c3');
});
