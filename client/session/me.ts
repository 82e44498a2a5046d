/** Who is at this device: asked once, kept on the device, sent to colleagues only while a classroom is open. */
export interface Me {
  readonly name: string;
  readonly initials: string;
}

const KEY = 'lowshelf.me';
let known: Me | null | undefined;

export function readMe(): Me | null {
  if (known === undefined) known = load();
  return known;
}

/** Who is here; empty when not said. */
export const me = (): Me => readMe() ?? { name: '', initials: '' };

export function keepMe(given: Me): void {
  known = given;
  try {
    localStorage.setItem(KEY, JSON.stringify(given));
  } catch {
    // A browser that keeps nothing still knows it until the page closes.
  }
}

function load(): Me | null {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(KEY) ?? 'null');
    if (typeof kept !== 'object' || kept === null) return null;
    const { name, initials } = kept as Record<string, unknown>;
    return typeof name === 'string' && typeof initials === 'string' ? { name, initials } : null;
  } catch {
    return null;
  }
}
