/** What the arrow keys go to. Fields keep the arrows for themselves and stay stops of their own. */
const THINGS = 'button, a[href], input[type="checkbox"]';
const ROWS = 'tr, li, legend';
/** Rows that a page key passes over. */
const PAGE = 10;

interface Place {
  readonly row: number;
  readonly column: number;
}

/**
 * Makes a table or a list one stop for Tab, for `ref`: inside it the arrow keys go from row to row and along the things of a row,
 * Home and End to the ends of the row and then of the list, as in the grid pattern of the ARIA Authoring Practices. Tab comes back
 * to what had focus last, or to what was chosen elsewhere since. To what reads the page aloud it stays the table it is.
 * @returns a function that stops it
 */
export function oneStop(list: HTMLElement | null): (() => void) | undefined {
  if (!list) return;
  let stop: HTMLElement | null = null;
  /** The column that a person walks down, kept over rows that are shorter. */
  let column = 0;

  const settle = (): void => {
    const all = thingsIn(list);
    if (!stop || !all.includes(stop)) stop = all.find(isChosen) ?? all[0] ?? null;
    for (const thing of all) {
      const tabIndex = thing === stop ? 0 : -1;
      if (thing.tabIndex !== tabIndex) thing.tabIndex = tabIndex;
    }
  };
  const onFocusIn = ({ target }: FocusEvent): void => {
    if (!(target instanceof HTMLElement) || target === stop || !target.matches(THINGS)) return;
    stop = target;
    column = placeOf(rowsIn(list), target)?.column ?? 0;
    settle();
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    const { target } = event;
    if (!(target instanceof HTMLElement) || !isWalk(event, target)) return;
    const rows = rowsIn(list);
    const at = placeOf(rows, target);
    if (!at) return;
    const to = walk(rows, at, column, event);
    if (!to) return;
    event.preventDefault();
    const next = rows[to.row]?.at(Math.min(to.column, (rows[to.row]?.length ?? 1) - 1));
    next?.focus();
    column = to.column;
  };
  const watch = new MutationObserver((changes) => {
    // Chosen on the drawing: Tab comes to its row. Not while somebody walks the list.
    const chosen = list.contains(document.activeElement)
      ? undefined
      : changes.findLast(({ type, target }) => type === 'attributes' && target instanceof HTMLElement && isChosen(target))?.target;
    if (chosen instanceof HTMLElement) stop = chosen;
    settle();
  });
  settle();
  list.addEventListener('focusin', onFocusIn);
  list.addEventListener('keydown', onKeyDown);
  watch.observe(list, { childList: true, subtree: true, attributes: true, attributeFilter: ['aria-pressed', 'aria-expanded', 'disabled'] });
  return () => {
    watch.disconnect();
    list.removeEventListener('focusin', onFocusIn);
    list.removeEventListener('keydown', onKeyDown);
  };
}

const thingsIn = (part: ParentNode): HTMLElement[] =>
  [...part.querySelectorAll<HTMLElement>(THINGS)].filter((thing) => !thing.matches(':disabled'));

const isChosen = (thing: HTMLElement): boolean =>
  thing.getAttribute('aria-pressed') === 'true' || (thing.getAttribute('aria-expanded') === 'true' && !thing.hasAttribute('aria-haspopup'));

/** The things of each row that has any; what stands in a row inside a row belongs to the inner one. */
function rowsIn(list: HTMLElement): HTMLElement[][] {
  const rows = new Map<Element | null, HTMLElement[]>();
  for (const thing of thingsIn(list)) {
    const row = thing.closest(ROWS);
    rows.set(row, [...(rows.get(row) ?? []), thing]);
  }
  return [...rows.values()];
}

function placeOf(rows: readonly HTMLElement[][], thing: HTMLElement): Place | null {
  const row = rows.findIndex((things) => things.includes(thing));
  return row < 0 ? null : { row, column: rows[row]?.indexOf(thing) ?? 0 };
}

/** Keys with Alt or Shift are others'; a button that opens a menu opens it with the arrow down. */
function isWalk({ key, altKey, shiftKey, metaKey }: KeyboardEvent, target: HTMLElement): boolean {
  if (altKey || shiftKey || metaKey) return false;
  return !(key === 'ArrowDown' && target.getAttribute('aria-haspopup') === 'menu');
}

/** Where a key leads; null: it is none of the list's. At an end it stays, so that the page does not scroll away under it. */
function walk(rows: readonly HTMLElement[][], { row, column }: Place, wanted: number, { key, ctrlKey }: KeyboardEvent): Place | null {
  const last = rows.length - 1;
  const end = (of: number): number => (rows[of]?.length ?? 1) - 1;
  const down = (by: number): Place => ({ row: Math.min(last, Math.max(0, row + by)), column: wanted });
  switch (ctrlKey ? `Ctrl ${key}` : key) {
    case 'ArrowDown':
      return down(1);
    case 'ArrowUp':
      return down(-1);
    case 'PageDown':
      return down(PAGE);
    case 'PageUp':
      return down(-PAGE);
    case 'ArrowRight':
      return { row, column: Math.min(end(row), column + 1) };
    case 'ArrowLeft':
      return { row, column: Math.max(0, column - 1) };
    case 'Home':
      return column > 0 ? { row, column: 0 } : { row: 0, column: 0 };
    case 'End':
      return column < end(row) ? { row, column: end(row) } : { row: last, column: end(last) };
    case 'Ctrl Home':
      return { row: 0, column: 0 };
    case 'Ctrl End':
      return { row: last, column: end(last) };
    default:
      return null;
  }
}
