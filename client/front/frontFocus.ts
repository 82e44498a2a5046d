import { keepInSight } from '../ui/keepInSight.ts';

/** ms that a front may take to be drawn after its shelf was chosen */
const WAIT = 1_500;

/**
 * Puts the keys on the drawing of the front that is shown. It may be drawn a moment later, so this waits for it.
 * @returns false: no front is on the page (on small screens it has a tab of its own)
 */
export function focusFront(page: Document = document): boolean {
  return focusSoon(page, '.front .front-drawing', '.front');
}

/**
 * A front opens showing its head, however far the part of the sheet was scrolled that it comes to lie in. Where the whole
 * page scrolls it stays, unless the head is above it. `within`: the front, or something in it; else nothing is done.
 */
export function showHead(within: Element): void {
  const head = within.closest('.front')?.querySelector<HTMLElement>('.front-head');
  if (!head) return;
  keepInSight(head);
  if (head.getBoundingClientRect().top < 0) head.scrollIntoView({ block: 'start' });
}

/** Puts the keys back on the plan. */
export function focusPlan(page: Document = document): boolean {
  return focusSoon(page, '.plan-paper', '.plan-paper');
}

/** Puts the keys at the head of the checks. @returns false: they are not of this sheet */
export function focusChecks(page: Document = document): boolean {
  return focusSoon(page, '.checks h2', '.room-sheet');
}

/** Scrolls a drawing to where it is seen; who pressed something that is no longer on the page goes along. */
export function bringIntoSight(drawing: 'front' | 'plan', page: Document = document): void {
  const until = performance.now() + WAIT;
  const step = (): void => {
    const element = page.querySelector<HTMLElement>(drawing === 'front' ? '.front .front-drawing' : '.plan-paper');
    if (element) {
      element.scrollIntoView({ block: 'nearest' });
      showHead(element);
      if (page.activeElement === page.body) element.focus({ preventScroll: true });
    } else if (performance.now() < until) requestAnimationFrame(step);
  };
  requestAnimationFrame(() => requestAnimationFrame(step));
}

function focusSoon(page: Document, wanted: string, whole: string): boolean {
  if (!page.querySelector(whole)) return false;
  const until = performance.now() + WAIT;
  const step = (): void => {
    const element = page.querySelector<HTMLElement>(wanted);
    if (element) {
      element.focus();
      showHead(element);
    } else if (performance.now() < until) requestAnimationFrame(step);
  };
  // After the page has drawn the shelf that was just chosen: its drawing is another element.
  requestAnimationFrame(() => requestAnimationFrame(step));
  return true;
}
