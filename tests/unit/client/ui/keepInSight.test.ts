// @vitest-environment happy-dom
import { afterEach, expect, it, vi } from 'vitest';
import { keepInSight } from '#client/ui/keepInSight.ts';

const place = (element: HTMLElement, top: number, height: number): void => {
  vi.spyOn(element, 'getBoundingClientRect').mockReturnValue(new DOMRect(0, top, 300, height));
};

afterEach(() => document.body.replaceChildren());

/** A part of 400 px from 100 px down that scrolls, with something 60 px high that sticks to its top, or not. */
function part(position: 'sticky' | 'static') {
  const list = document.createElement('section');
  list.style.overflowY = 'auto';
  Object.defineProperties(list, { scrollHeight: { value: 2000 }, clientHeight: { value: 400 } });
  const [swap, thing] = [document.createElement('div'), document.createElement('div')];
  swap.style.position = position;
  list.append(swap, thing);
  document.body.append(list);
  list.scrollTop = 500;
  place(list, 100, 400);
  place(swap, 100, 60);
  return { list, thing };
}

it.each([
  ['static', 90, 482],
  ['static', 110, 500],
  ['sticky', 110, 442],
  ['sticky', 170, 500],
] as const)('with a %s head a thing whose top is at %d px is scrolled to %d px', (position, top, scrolled) => {
  const { list, thing } = part(position);
  place(thing, top, 120);
  keepInSight(thing);
  expect(list.scrollTop).toBe(scrolled);
});

it('what reaches below its foot comes up, its head first', () => {
  const { list, thing } = part('sticky');
  place(thing, 400, 600);
  keepInSight(thing);
  // From 400 px to 8 px below the 60 px that stick at 100 px.
  expect(list.scrollTop).toBe(732);
});
