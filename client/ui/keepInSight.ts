/** px left free beside it */
const AIR = 8;

/**
 * Scrolls the part of the sheet that a thing lies in until the thing is seen whole, its head first. Where the whole page
 * scrolls it stays, unless the person is on the thing: a press on the drawing does not leave the drawing.
 */
export function keepInSight(thing: HTMLElement): void {
  const part = scrollingPart(thing);
  if (!part) {
    if (thing.contains(document.activeElement)) thing.scrollIntoView({ block: 'nearest' });
    return;
  }
  const [own, frame] = [thing.getBoundingClientRect(), part.getBoundingClientRect()];
  const over = own.top - AIR - (frame.top + stuckAtTop(part));
  const under = own.bottom + AIR - (frame.top + part.clientHeight);
  if (over < 0) part.scrollTop += over;
  else if (under > 0) part.scrollTop += Math.min(under, over);
}

/** px at its top that stay where they are while it scrolls, and lie over what does. */
function stuckAtTop(part: HTMLElement): number {
  const stuck = [...part.children].filter((child) => getComputedStyle(child).position === 'sticky');
  return Math.max(0, ...stuck.map((child) => child.getBoundingClientRect().height));
}

function scrollingPart(thing: HTMLElement): HTMLElement | null {
  for (let part = thing.parentElement; part && part !== document.body; part = part.parentElement) {
    if (part.scrollHeight > part.clientHeight + 1 && /auto|scroll/.test(getComputedStyle(part).overflowY)) return part;
  }
  return null;
}

/** ms after which it is looked again whether it still lies there: what stands above it comes bit by bit. */
const AGAIN = [0, 120, 400];

/** Puts a thing into the middle of what is seen, until somebody slides the page. @returns ends it */
export function comeBackTo(thing: HTMLElement): () => void {
  const part = scrollingPart(thing);
  const slid = (): number => scrollY + (part?.scrollTop ?? 0);
  let before: number | null = null;
  const timers = AGAIN.map((ms) =>
    setTimeout(() => {
      if (before !== null && Math.abs(slid() - before) > 1) return;
      thing.scrollIntoView({ block: 'center' });
      before = slid();
    }, ms),
  );
  return () => timers.forEach(clearTimeout);
}
