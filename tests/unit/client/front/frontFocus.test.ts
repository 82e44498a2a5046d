// @vitest-environment happy-dom
import { afterEach, expect, it, vi } from 'vitest';
import { focusFront, focusPlan } from '#client/front/frontFocus.ts';

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
