/** A tray on a board: mm from the board's left end to its left edge, and its width (mm). */
export interface Standing {
  readonly id: string;
  readonly x: number;
  readonly width: number;
}

export type MadeRoom =
  | { readonly fits: true; readonly places: ReadonlyMap<string, number> }
  /** mm that the board is too short for the trays side by side without any gap */
  | { readonly fits: false; readonly shortBy: number };

const right = (tray: Standing): number => tray.x + tray.width;

/**
 * Slides the trays of a board apart, in the order given and as little as needed. Neighbours keep at least
 * `gap` mm, or what they have now where they already stand closer; on a board too short for that all gaps shrink alike.
 * Only trays that have to move are in `places` (mm).
 */
export function slideApart(trays: readonly Standing[], boardWidth: number, gap: number, moving?: string): MadeRoom {
  const spare = boardWidth - trays.reduce((sum, tray) => sum + tray.width, 0);
  if (spare < -1e-6) return { fits: false, shortBy: -spare };
  const wanted = trays.slice(1).map((tray, index) => {
    const before = trays[index] as Standing;
    if (before.id === moving || tray.id === moving) return gap;
    return Math.min(gap, Math.max(0, tray.x - right(before)));
  });
  const sum = wanted.reduce((total, value) => total + value, 0);
  const share = sum > spare ? spare / sum : 1;
  const gaps = wanted.map((value) => value * share);
  const xs: number[] = [];
  trays.forEach((tray, i) => {
    const before = trays[i - 1];
    const least = before ? (xs[i - 1] as number) + before.width + (gaps[i - 1] as number) : 0;
    xs.push(Math.max(tray.x, least));
  });
  for (let i = trays.length - 1; i >= 0; i--) {
    const tray = trays[i] as Standing;
    const most = i === trays.length - 1 ? boardWidth : (xs[i + 1] as number) - (gaps[i] as number);
    xs[i] = Math.max(0, Math.min(xs[i] as number, most - tray.width));
  }
  const places = new Map<string, number>();
  trays.forEach((tray, i) => {
    const x = xs[i] as number;
    if (Math.abs(x - tray.x) > 1e-6 || tray.id === moving) places.set(tray.id, x);
  });
  return { fits: true, places };
}

/** The trays of a board left to right with one more among them, by the middles. */
export function withTray(others: readonly Standing[], moving: Standing): Standing[] {
  const middle = (tray: Standing): number => tray.x + tray.width / 2;
  const rest = others.filter((tray) => tray.id !== moving.id).sort((p, q) => p.x - q.x);
  const at = rest.findIndex((tray) => middle(tray) > middle(moving));
  return at === -1 ? [...rest, moving] : [...rest.slice(0, at), moving, ...rest.slice(at)];
}

/** Puts a tray between others near x and slides those along that are in its way. Never moves a tray to another board. */
export function putAmong(others: readonly Standing[], moving: Standing, boardWidth: number, gap: number): MadeRoom {
  return slideApart(withTray(others, moving), boardWidth, gap, moving.id);
}
