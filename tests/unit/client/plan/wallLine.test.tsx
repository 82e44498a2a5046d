// @vitest-environment happy-dom
import { act } from 'react';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { planStoreOf } from '#client/plan/planStore.ts';
import { WallLine } from '#client/plan/WallLine.tsx';
import { type PlanSession, planSession } from './planSession.ts';
import { showPart } from './shownPart.tsx';

let session: PlanSession;
let hide: () => void;
const lengthField = (): HTMLInputElement => {
  const field = document.querySelector<HTMLInputElement>('.wall-next input');
  if (!field) throw new Error('no field for the length');
  return field;
};

function type(text: string): void {
  const field = lengthField();
  field.focus();
  act(() => {
    Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')?.set?.call(field, text);
    field.dispatchEvent(new Event('input', { bubbles: true }));
  });
}
const enter = (): void => act(() => void lengthField().dispatchEvent(new KeyboardEvent('keydown', { key: 'Enter', bubbles: true })));
const verbs = (): string[] => [...document.querySelectorAll('button')].map((button) => button.textContent ?? '');

beforeEach(() => {
  session = planSession();
  hide = showPart(session, <WallLine />);
});

afterEach(() => hide());

it('draws a wall with Enter, empties the field and keeps the keys in it', () => {
  const before = verbs();
  type('4.00');
  enter();
  expect(planStoreOf(session).state().corners).toEqual([
    { x: 0, y: 0 },
    { x: 4000, y: 0 },
  ]);
  expect(session.said.at(-1)).toBe('Wall 1 is drawn, 4.00 m. Type the next one.');
  expect([lengthField().value, document.activeElement === lengthField()]).toEqual(['', true]);
  // Every button stands where it stood.
  expect(verbs()).toEqual(before);
});

it('goes on to the next wall and keeps the keys after "Draw it"', () => {
  for (const text of ['4.00', '3.00']) {
    type(text);
    const draw = [...document.querySelectorAll('button')].find((button) => button.textContent === 'Draw it');
    act(() => draw?.click());
    expect(document.activeElement).toBe(lengthField());
  }
  expect(planStoreOf(session).state().corners.at(-1)).toEqual({ x: 4000, y: 3000 });
});

it('says what Enter on an empty field wants, and draws nothing', () => {
  enter();
  expect(session.said.at(-1)).toBe('Type how long the wall is, such as 4.20.');
  expect(planStoreOf(session).state().corners).toEqual([]);
});
