// @vitest-environment happy-dom
import { afterEach, expect, it, vi } from 'vitest';
import { bringIntoSight, focusChecks, focusFront, focusPlan, showHead } from '#client/front/frontFocus.ts';

afterEach(() => {
  document.body.innerHTML = '';
});

it('waits for a front that is drawn a moment later, and comes back to the plan', async () => {
  document.body.innerHTML = '<div class="plan-paper" tabindex="0"></div><section class="front"></section>';
  expect(focusFront()).toBe(true);
  const front = document.querySelector('.front');
  if (front) front.innerHTML = '<div class="front-drawing" tabindex="0"></div>';
  await vi.waitFor(() => expect(document.activeElement?.className).toBe('front-drawing'));
  expect(focusPlan()).toBe(true);
  await vi.waitFor(() => expect(document.activeElement?.className).toBe('plan-paper'));
});

it('says when no front is on the page', () => {
  expect(focusFront()).toBe(false);
});

it('goes past the plan to the head of the checks', async () => {
  expect(focusChecks()).toBe(false);
  document.body.innerHTML = '<div class="room-sheet"><div class="checks"><h2 tabindex="-1">Checks</h2></div></div>';
  expect(focusChecks()).toBe(true);
  await vi.waitFor(() => expect(document.activeElement?.textContent).toBe('Checks'));
});

it('scrolls a drawing to where it is seen, and takes the keys along only where what had them is gone', async () => {
  document.body.innerHTML = '<button>Show</button><div class="plan-paper" tabindex="0"></div>';
  const seen = vi.fn();
  const paper = document.querySelector<HTMLElement>('.plan-paper');
  if (paper) paper.scrollIntoView = seen;
  document.querySelector('button')?.focus();
  bringIntoSight('plan');
  await vi.waitFor(() => expect(seen).toHaveBeenCalledTimes(1));
  expect(document.activeElement?.textContent).toBe('Show');
  document.querySelector('button')?.remove();
  bringIntoSight('plan');
  await vi.waitFor(() => expect(document.activeElement?.className).toBe('plan-paper'));
});

it('a front opens showing its head, however far its part of the sheet was scrolled', () => {
  document.body.innerHTML =
    '<section id="part" style="overflow-y: auto"><section class="front"><div class="front-head"></div><div class="front-drawing"></div></section></section>';
  const [part, head, drawing] = ['#part', '.front-head', '.front-drawing'].map((name) => document.querySelector<HTMLElement>(name));
  if (!part || !head || !drawing) throw new Error('not drawn');
  Object.defineProperties(part, { scrollHeight: { value: 2000 }, clientHeight: { value: 400 } });
  part.scrollTop = 300;
  vi.spyOn(part, 'getBoundingClientRect').mockReturnValue(new DOMRect(0, 100, 300, 400));
  vi.spyOn(head, 'getBoundingClientRect').mockImplementation(() => new DOMRect(0, 108 - part.scrollTop, 300, 40));
  showHead(drawing);
  expect(part.scrollTop).toBe(0);
  expect(() => showHead(document.body)).not.toThrow();
});
