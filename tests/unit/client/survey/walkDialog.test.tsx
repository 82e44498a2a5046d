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
