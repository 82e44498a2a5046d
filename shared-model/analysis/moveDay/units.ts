import { overlapsBy } from '../../geometry/penetration.ts';
import { boxesMeet } from '../../geometry/polygon.ts';
import { boxOf, cachedParts, canClash } from '../../measures/overlaps.ts';
import { pieceBody } from '../../scene/bodies.ts';
import type { SceneBody } from '../../scene/types.ts';
import type { PieceChange } from './differences.ts';
import { TOUCHING } from './practice.ts';
import type { Precedence } from './setAside.ts';

/** What is taken up and set down as one: a piece, or a table with those of its chairs that move. */
export interface MoveUnit {
  /** Id of its first piece. */
  readonly id: string;
  /** The table first, then its chairs. */
  readonly changes: readonly PieceChange[];
  /** Where they stand now; empty: they are new. */
  readonly from: readonly SceneBody[];
  /** Where they will stand; empty: they are put away. */
  readonly to: readonly SceneBody[];
  /** Lies on the floor, and things stand on it. */
  readonly isRug: boolean;
}

/** What takes its place on the floor otherwise than before; shelves that only get other boards stay where they are. */
export function moveUnits(changes: readonly PieceChange[]): MoveUnit[] {
  const moving = changes.filter(({ before, after, by, turned, isExchanged }) => !before || !after || by > 0 || turned !== 0 || isExchanged);
  const leadOf = (change: PieceChange): string => {
    const table = change.before && change.after && change.before.table === change.after.table ? change.before.table : null;
    return table === null ? change.id : table;
  };
  const groups = new Map<string, PieceChange[]>();
  for (const change of moving) {
    const key = leadOf(change);
    const list = groups.get(key);
    if (!list) groups.set(key, [change]);
    else if (change.id === key) list.unshift(change);
    else list.push(change);
  }
  return [...groups.values()].map((list) => ({
    id: list[0]?.id ?? '',
    changes: list,
    from: list.flatMap(({ before }) => (before ? [pieceBody(before)] : [])),
    to: list.flatMap(({ after }) => (after ? [pieceBody(after)] : [])),
    isRug: (list[0]?.before ?? list[0]?.after)?.kind === 'rug',
  }));
}

const partsOf = cachedParts();

/** Two things would stand in the same place. */
export function clashes(a: SceneBody, b: SceneBody): boolean {
  return canClash(a, b) && boxesMeet(boxOf(a), boxOf(b)) && overlapsBy(partsOf(a), partsOf(b), TOUCHING);
}

/** The same for a rug and what stands on it. */
const liesUnder = (a: SceneBody, b: SceneBody): boolean => boxesMeet(boxOf(a), boxOf(b)) && overlapsBy(partsOf(a), partsOf(b), TOUCHING);

const some = (p: readonly SceneBody[], q: readonly SceneBody[], meet: (a: SceneBody, b: SceneBody) => boolean): boolean =>
  p.some((a) => q.some((b) => meet(a, b)));

/** Which unit has to be gone before another can come, and what lies under what. */
export function precedencesOf(units: readonly MoveUnit[]): Precedence[] {
  const all: Precedence[] = [];
  units.forEach((one, first) => {
    units.forEach((other, second) => {
      if (first === second || (one.isRug && other.isRug)) return;
      const meet = one.isRug || other.isRug ? liesUnder : clashes;
      // What stands where a rug is to lie has to be gone; a rug that lies where something is to stand stays flat till it is taken up.
      if (some(one.from, other.to, meet)) all.push({ first, second, kind: 'off-on' });
      if (other.isRug && some(one.from, other.from, meet)) all.push({ first, second, kind: 'off-off' });
      if (one.isRug && some(one.to, other.to, meet)) all.push({ first, second, kind: 'on-on' });
    });
  });
  return all;
}
