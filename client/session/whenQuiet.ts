/** ms after the drawing stands: by then nobody waits for anything that is fetched */
const QUIET = 4000;
/** ms after which a page is quiet that draws no plan: a list of classrooms, another sheet */
const NO_DRAWING = 3 * QUIET;

const waiting: (() => Promise<unknown>)[] = [];
let isGoing = false;

/**
 * Fetches a part of the page that is not seen at first once the page is quiet, one after the other, so that it is there
 * when it is wanted, also with the server away. What cannot be fetched then is asked for again, until it is here.
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
  const quietFrom = drawn ? drawn.startTime + QUIET : NO_DRAWING;
  const left = quietFrom - performance.now();
  if (left > 0) setTimeout(begin, Math.min(left, QUIET / 4));
  else next();
}

function next(): void {
  const load = waiting.shift();
  if (!load) {
    isGoing = false;
    return;
  }
  load().then(
    () => setTimeout(next),
    () => {
      waiting.push(load);
      setTimeout(next, NO_DRAWING);
    },
  );
}
