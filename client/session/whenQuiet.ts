/** ms after the drawing stands: by then nobody waits for anything that is fetched */
const QUIET = 4000;

const waiting: (() => Promise<unknown>)[] = [];
let isGoing = false;

/**
 * Fetches a part of the page that is not seen at first once the page is quiet, one after the other, so that it is there
 * when it is wanted, also with the server away. What cannot be fetched then is asked for again where it is wanted.
 */
export function fetchWhenQuiet(load: () => Promise<unknown>): void {
  waiting.push(load);
  if (isGoing || typeof window === 'undefined') return;
  isGoing = true;
  setTimeout(begin, QUIET);
}

/** Not before the drawing stands, however slow the tablet. */
function begin(): void {
  const [drawn] = performance.getEntriesByName('plan-drawn');
  const left = drawn ? drawn.startTime + QUIET - performance.now() : QUIET;
  setTimeout(left > 0 ? begin : next, Math.max(0, left));
}

function next(): void {
  const load = waiting.shift();
  if (!load) {
    isGoing = false;
    return;
  }
  load()
    .catch(() => undefined)
    .finally(() => setTimeout(next));
}
