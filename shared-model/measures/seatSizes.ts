import type { Scene } from '../scene/types.ts';
import { furnitureSizes } from '../standards/furnitureSizes.ts';
import { childModel } from './childModel.ts';
import type { Seats } from './seats.ts';

/** Seats by size mark; null: the height of the table (or of a free seat) is not known. */
export interface SizedSeats {
  readonly mark: number | null;
  readonly seats: number;
  /** what people call the table or seat */
  readonly label: string;
}

/** A group of children with its size mark. */
export interface SizedGroup {
  readonly id: string;
  readonly name: string;
  readonly count: number;
  /** null: younger than the growth tables */
  readonly mark: number | null;
  /** mm: median stature in the middle of the group's ages */
  readonly stature: number;
}

/** The mark whose table (or seat) height is nearest; with ties the smaller one. */
export function markOfHeight(height: number, of: 'table' | 'seat'): number {
  return nearest((size) => Math.abs(size[of] - height));
}

/** The mark whose range of statures has its middle nearest. */
export function markOfStature(stature: number): number {
  return nearest(({ stature: [from, to] }) => Math.abs((from + to) / 2 - stature));
}

type Size = (typeof furnitureSizes)[number];
function nearest(away: (size: Size) => number): number {
  const [first, ...rest] = furnitureSizes;
  if (!first) return 0;
  return rest.reduce((best, size) => (away(size) < away(best) ? size : best), first).mark;
}

/** A table's seats take the mark of its height, a free seat that of its own. */
export function sizedSeats({ tables, free }: Seats): SizedSeats[] {
  return [
    ...tables.map(({ table, seats }) => ({
      mark: table.height === null ? null : markOfHeight(table.height, 'table'),
      seats,
      label: table.label,
    })),
    ...free.map(({ height, label }) => ({ mark: height === null ? null : markOfHeight(height, 'seat'), seats: 1, label })),
  ].filter(({ seats }) => seats > 0);
}

/** Every group with children, by the median stature (girls, CDC 2000) in the middle of its ages. */
export function sizedGroups(scene: Scene): SizedGroup[] {
  return scene.classroom.children.groups
    .filter((group) => group.count > 0)
    .map(({ id, name, count, fromMonths, toMonths }): SizedGroup => {
      const months = (fromMonths + Math.max(fromMonths, toMonths)) / 2;
      const child = childModel({ months, percentile: 50 });
      return { id, name: name || `group ${id}`, count, mark: child && markOfStature(child.stature), stature: child?.stature ?? 0 };
    });
}

/** A group and the seats it needs. */
export interface SeatWish {
  readonly mark: number;
  readonly needed: number;
}

/**
 * Gives every seat to one group at most, its mark no more than `tolerance` from the group's, so that as many wishes as
 * possible are met. All groups take a range of marks of the same width, so a seat goes to the group whose range ends
 * first among those it suits.
 * @returns seats that each group gets, in the order of the wishes
 */
export function shareSeats(
  wishes: readonly SeatWish[],
  seats: readonly { readonly mark: number; readonly seats: number }[],
  tolerance: number,
): number[] {
  const got = wishes.map(() => 0);
  const order = wishes.map((_, i) => i).sort((p, q) => (wishes[p]?.mark ?? 0) - (wishes[q]?.mark ?? 0));
  for (const { mark, seats: count } of [...seats].sort((p, q) => p.mark - q.mark)) {
    let left = count;
    for (const i of order) {
      const wish = wishes[i];
      if (!wish || Math.abs(wish.mark - mark) > tolerance) continue;
      const given = Math.min(left, wish.needed - (got[i] ?? 0));
      got[i] = (got[i] ?? 0) + given;
      left -= given;
    }
  }
  return got;
}

/**
 * Shares out mats among groups by heads: whole mats, the largest remainders first (with ties the earlier group), no
 * group more than it has children.
 */
export function shareMats(counts: readonly number[], mats: number): number[] {
  const children = counts.reduce((sum, count) => sum + count, 0);
  if (children === 0) return counts.map(() => 0);
  const whole = Math.min(mats, children);
  const exact = counts.map((count) => (whole * count) / children);
  const given = exact.map((share) => Math.floor(share + 1e-9));
  const order = exact.map((share, i) => ({ i, rest: share - (given[i] ?? 0) })).sort((p, q) => q.rest - p.rest || p.i - q.i);
  let left = whole - given.reduce((sum, count) => sum + count, 0);
  for (const { i } of order) {
    if (left <= 0) break;
    given[i] = (given[i] ?? 0) + 1;
    left--;
  }
  return given;
}
