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
  const over = own.top - AIR - frame.top;
  const under = own.bottom + AIR - (frame.top + part.clientHeight);
  if (over < 0) part.scrollTop += over;
  else if (under > 0) part.scrollTop += Math.min(under, over);
}

function scrollingPart(thing: HTMLElement): HTMLElement | null {
  for (let part = thing.parentElement; part && part !== document.body; part = part.parentElement) {
    if (part.scrollHeight > part.clientHeight + 1 && /auto|scroll/.test(getComputedStyle(part).overflowY)) return part;
  }
  return null;
}
