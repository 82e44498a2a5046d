/** Where focus goes when what had it is gone, best first; what comes later in the list is further away. */
type Heirs = readonly HTMLElement[];

/**
 * Keeps focus in a sheet or a part of it: when what has it goes away (a finding that was mended or left, a button whose work
 * is done), it goes to the neighbour that a person would go on with. Never takes it from where somebody went meanwhile.
 * @returns a function that stops it
 */
export function keepFocus(part: HTMLElement): () => void {
  let held: { readonly element: HTMLElement; readonly heirs: Heirs; readonly around: Heirs } | null = null;

  const onFocusIn = ({ target }: FocusEvent): void => {
    if (target instanceof HTMLElement) held = { element: target, heirs: entriesNear(target), around: around(target, part) };
  };
  const onFocusOut = (): void => {
    // Leaving by itself and being taken away look alike until what was drawn anew is in place.
    queueMicrotask(() => {
      if (held?.element.isConnected && document.activeElement !== held.element) held = null;
    });
  };
  const hand = (): void => {
    if (!held || held.element.isConnected || !isFocusLost()) return;
    const { heirs, around } = held;
    const next =
      heirs.find(isThere) ?? around.filter(isThere).flatMap((near) => goOnWith(near, heirs.length > 0 || !near.matches('section')))[0];
    held = null;
    next?.focus();
  };

  part.addEventListener('focusin', onFocusIn);
  part.addEventListener('focusout', onFocusOut);
  // Not while the key that did it is still being heard: Enter would press the button that focus comes to.
  const watch = new MutationObserver(() => held?.element.isConnected === false && setTimeout(hand));
  watch.observe(part, { childList: true, subtree: true });
  return () => {
    watch.disconnect();
    part.removeEventListener('focusin', onFocusIn);
    part.removeEventListener('focusout', onFocusOut);
  };
}

const isThere = (element: HTMLElement): boolean => element.isConnected;
const isFocusLost = (): boolean => document.activeElement === null || document.activeElement === document.body;

/** Of something in a list or a table: its own entry, those after it, those before it. */
function entriesNear(element: HTMLElement): Heirs {
  const own = element.closest<HTMLElement>('li.finding') ?? element.closest<HTMLElement>('li, tbody > tr');
  if (!own) return [];
  const all = [...(own.parentElement?.children ?? [])].filter((child) => child instanceof HTMLElement);
  const at = all.indexOf(own);
  // A name before a verb, which may be gone as well.
  return [own, ...all.slice(at + 1), ...all.slice(0, at).reverse()].flatMap((entry) =>
    [...entry.querySelectorAll<HTMLElement>('button, input, a[href]')].filter((heir) => heir !== element).slice(0, 1),
  );
}

/** The parts that something stands in, the closest first. */
function around(element: HTMLElement, part: HTMLElement): Heirs {
  const parts: HTMLElement[] = [];
  for (let at = element.parentElement; at && at !== part; at = at.parentElement) if (at.matches('section, .plan, .checks')) parts.push(at);
  return [...parts, part];
}

/** What came of it, where that is told; else what can be done there; else the heading, which is all that a list leaves. */
function goOnWith(part: HTMLElement, isList: boolean): Heirs {
  // What a tool asked is answered: the drawing has the keys again.
  const paper = part.matches('.plan') ? part.querySelector<HTMLElement>('.plan-paper') : null;
  if (paper) return [paper];
  const told = isList ? null : part.querySelector<HTMLElement>('[data-told]');
  const verb = !isList && part.matches('.mend') ? part.querySelector<HTMLElement>('button') : null;
  const heir = told ?? verb ?? part.querySelector<HTMLElement>('h2, h3');
  if (!heir) return [];
  // Read and gone on from, but no stop of its own for Tab.
  if (!heir.matches('button, [tabindex]')) heir.tabIndex = -1;
  return [heir];
}
