import { type Box, boxesMeet } from '../geometry/polygon.ts';
import type { FieldChange } from './fieldChange.ts';

interface Entry<V> {
  readonly value: V;
  readonly box: Box;
  /** The round in which it was last asked for. */
  round: number;
}

/** What was worked out of the surroundings of things: it holds as long as nothing within its box comes or goes. */
class Local<K extends object, V> {
  private kept = new Map<K, Entry<V>>();
  private round = 0;

  get(key: K): V | undefined {
    const entry = this.kept.get(key);
    if (!entry) return undefined;
    entry.round = this.round;
    return entry.value;
  }

  /** @param box holds everything that the value depends on */
  set(key: K, value: V, box: Box): V {
    this.kept.set(key, { value, box, round: this.round });
    return value;
  }

  /** Forgets what no longer holds, and what nobody asked for since the last change. True: something is left. */
  outlive(boxes: readonly Box[]): boolean {
    const left = new Map<K, Entry<V>>();
    for (const [key, entry] of this.kept)
      if (entry.round === this.round && !boxes.some((box) => boxesMeet(box, entry.box))) left.set(key, entry);
    // Never taken out one by one: a map that comes and goes chains each of its tables to the next, and with them what long is gone.
    if (left.size < this.kept.size) this.kept = left;
    this.round++;
    return this.kept.size > 0;
  }
}

/** One sort of local values. */
interface Sort {
  /** The keys carry indices of parts. */
  readonly isByIndex: boolean;
}

/** All that was worked out locally in one field. */
export class FieldLocals {
  private bySort = new Map<Sort, Map<number, Local<object, unknown>>>();

  of(sort: Sort, figure: number): Local<object, unknown> {
    const byFigure = this.byFigureOf(sort);
    const known = byFigure.get(figure);
    if (known) return known;
    const made = new Local<object, unknown>();
    byFigure.set(figure, made);
    return made;
  }

  /** Hands over what still holds after a change; nothing stays here. */
  after({ boxes, isShifted }: FieldChange): FieldLocals {
    const next = new FieldLocals();
    next.bySort = this.bySort;
    this.bySort = new Map();
    for (const [sort, byFigure] of next.bySort) {
      if (sort.isByIndex && isShifted) next.bySort.delete(sort);
      for (const [figure, local] of byFigure) if (!local.outlive(boxes)) byFigure.delete(figure);
    }
    return next;
  }

  private byFigureOf(sort: Sort): Map<number, Local<object, unknown>> {
    const known = this.bySort.get(sort);
    if (known) return known;
    const made = new Map<number, Local<object, unknown>>();
    this.bySort.set(sort, made);
    return made;
  }
}

/**
 * Declares a sort of local values: the function gives those of a field that were worked out with one figure (mm), such
 * as the widest disc of interest.
 */
export function localValues<K extends object, V>(isByIndex = false) {
  const sort: Sort = { isByIndex };
  return (field: { readonly locals: FieldLocals }, figure: number) => field.locals.of(sort, figure) as Local<K, V>;
}
