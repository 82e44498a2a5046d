import { MinHeap } from '../../geometry/minHeap.ts';
import { add, length, type Point } from '../../geometry/vec.ts';
import { type Conflict, Conflicts, conflictOf, leastWrong, nearTo } from './conflicts.ts';
import { at, type Layout, layoutKey, totalOf } from './layout.ts';
import { FARTHEST } from './limits.ts';
import { Moves } from './moves.ts';
import type { Short, Stage, Unit } from './stage.ts';
import { Standing } from './standing.ts';

/** A must that a layout would bring, and how to ask for it again with some units out of the room. */
export interface NewMust {
  readonly subjects: readonly string[];
  readonly isThere: (without: ReadonlySet<string>) => boolean;
}

export interface SearchOptions {
  /** How many pieces may move. */
  readonly most: number;
  /** A must that was not there before; null: the layout holds. */
  readonly newMust: (layout: Layout) => NewMust | null;
}

export interface RunOptions {
  /** How often the ways are measured before the search gives up: counted, so the same on every device. */
  readonly looks: number;
  /** mm: only layouts with a smaller total. */
  readonly below: number;
  /** The places of a grid too, not only where something touches or is as wide as asked. */
  readonly hasGrid: boolean;
}

export interface SearchProgress {
  /** How often the ways have been measured. */
  readonly looks: number;
  /** mm: every layout with a smaller total has been tried. */
  readonly total: number;
}

export type Searched =
  | { readonly end: 'found'; readonly layout: Layout }
  /** At least so many pieces would have to move. */
  | { readonly end: 'apart'; readonly pieces: number; readonly ways: readonly string[] }
  /** Every layout of the tree was tried. */
  | { readonly end: 'all' }
  /** Every layout of the tree with a total below `total` mm was tried. */
  | { readonly end: 'looks'; readonly total: number };

/** Most layouts are told by a conflict that is known already, without a look; so many of them count as one. */
const NODES_PER_LOOK = 2;

interface Node {
  readonly layout: Layout;
  /** Units that have been moved twice, square to each other: these stay. */
  readonly done: ReadonlySet<string>;
  /** What the last move was meant to mend, if it was the way to a front. */
  readonly mends: { readonly short: Short; readonly units: readonly string[] } | null;
}

/**
 * Best first over the tree of layouts: the root is the room as it stands; a layout that fails has a child for every
 * move (`Moves`) of every unit of one of its conflicts. Whatever mends a layout moves one of these, so no other moves
 * have to be tried, and the first layout that holds has the least total in the tree.
 */
export class Search {
  private readonly conflicts = new Conflicts();
  private readonly moves: Moves;
  private readonly standing: Standing;
  private readonly shortOf = new Map<Conflict, Short>();
  private count = 0;

  constructor(
    private readonly stage: Stage,
    private readonly options: SearchOptions,
  ) {
    this.moves = new Moves(stage);
    this.standing = new Standing(stage);
  }

  /** How often the ways have been measured. */
  get looks(): number {
    return this.count;
  }

  /** What a run has learned the next one knows. */
  *run({ looks, below, hasGrid }: RunOptions): Generator<SearchProgress, Searched> {
    const heap = new MinHeap<Node>();
    const seen = new Set<string>();
    const last = this.count + looks;
    let nodes = 0;
    let order = 0;
    const push = (node: Node): void => {
      const key = layoutKey(node.layout);
      const total = totalOf(node.layout);
      if (total >= below || seen.has(key)) return;
      seen.add(key);
      // With equal totals the fewer pieces, then the one that came first.
      heap.push(total + node.layout.size * 1e-4 + order++ * 1e-10, node);
    };
    push({ layout: new Map(), done: new Set(), mends: null });
    let apart = 0;
    let ways: readonly string[] = [];
    for (let next = heap.pop(); next; next = heap.pop()) {
      const { value: node } = next;
      const total = totalOf(node.layout);
      if (this.count >= last || nodes++ >= looks * NODES_PER_LOOK) return { end: 'looks', total };
      const blocking = yield* this.conflictsOf(node, total);
      if (blocking.length === 0) return { end: 'found', layout: node.layout };
      const need = this.piecesNeeded(node, blocking);
      if (node.layout.size === 0) {
        apart = need;
        ways = blocking.flatMap((conflict) => this.shortOf.get(conflict)?.label ?? []);
      }
      if (need > this.options.most - node.layout.size) continue;
      const [first] = [...blocking].sort((p, q) => this.canMove(node, p).length - this.canMove(node, q).length);
      if (first) for (const child of this.children(node, first, hasGrid)) push(child);
    }
    return apart > this.options.most && apart < Infinity ? { end: 'apart', pieces: apart, ways } : { end: 'all' };
  }

  /** Stands where nothing is in its way, and every way is wide enough; whether a new must has come is not asked. */
  holds(layout: Layout): boolean {
    for (const [id, shift] of layout) {
      const unit = this.stage.freeById.get(id);
      if (!unit || !this.standing.isClear(unit, shift)) return false;
    }
    return !this.clashIn(layout) && this.shortWithout(layout, new Set()).length === 0;
  }

  /** Conflicts of a layout, no two of which share a unit that may still move; none: it holds. */
  private *conflictsOf(node: Node, total: number): Generator<SearchProgress, Conflict[]> {
    const { layout } = node;
    const chosen = this.disjoint(node, this.conflicts.presentIn(layout));
    const most = this.options.most - layout.size;
    if (chosen.length > most || chosen.some((conflict) => this.canMove(node, conflict).length === 0)) return chosen;
    const clash = this.clashIn(layout);
    if (clash) {
      this.conflicts.add(clash);
      return this.disjoint(node, [clash, ...chosen]);
    }
    if (chosen.length === 0 && node.mends) {
      const again = this.isStillShort(layout, node.mends);
      yield { looks: this.count, total };
      if (again) chosen.push(again);
    }
    const out = new Set(chosen.flatMap((conflict) => this.canMove(node, conflict).map(({ id }) => id)));
    while (chosen.length <= most) {
      yield { looks: this.count, total };
      const [worst] = this.shortWithout(layout, out).sort((p, q) => p.width - q.width);
      if (!worst) break;
      const conflict = yield* this.least(layout, worst, out, total);
      chosen.push(conflict);
      const free = this.canMove(node, conflict);
      if (free.length === 0) break;
      for (const { id } of free) out.add(id);
    }
    if (chosen.length > 0) return chosen;
    const must = this.options.newMust(layout);
    if (!must) return [];
    const near = (unit: Unit): number =>
      must.subjects.some((id) => this.stage.freeUnitOf(id) === unit) ? -1 : layout.has(unit.id) ? 0 : 1;
    const units = yield* this.told(leastWrong(this.stage.free, near, must.isThere), total);
    const conflict = conflictOf(
      layout,
      units.map(({ id }) => id),
    );
    this.conflicts.add(conflict);
    return [conflict];
  }

  private *least(layout: Layout, short: Short, out: ReadonlySet<string>, total: number): Generator<SearchProgress, Conflict> {
    const there = this.stage.free.filter((unit) => !out.has(unit.id));
    const isWrong = (without: ReadonlySet<string>): boolean =>
      this.shortWithout(layout, new Set([...out, ...without])).some((other) => other.key === short.key);
    const units = yield* this.told(leastWrong(there, nearTo(this.stage, layout, short), isWrong), total);
    const conflict = conflictOf(
      layout,
      units.map(({ id }) => id),
    );
    this.conflicts.add(conflict);
    this.shortOf.set(conflict, short);
    return conflict;
  }

  private *told<T>(work: Generator<void, T>, total: number): Generator<SearchProgress, T> {
    for (let step = work.next(); ; step = work.next()) {
      if (step.done) return step.value;
      yield { looks: this.count, total };
    }
  }

  private shortWithout(layout: Layout, without: ReadonlySet<string>): Short[] {
    this.count++;
    return this.stage.shortIn(this.stage.sceneAt(layout, without));
  }

  /** A cheap look with just the units that held the way back before the last move. */
  private isStillShort(layout: Layout, { short, units }: NonNullable<Node['mends']>): Conflict | null {
    const without = new Set(this.stage.free.map(({ id }) => id).filter((id) => !units.includes(id)));
    const again = this.shortWithout(layout, without).find(({ key }) => key === short.key);
    if (!again) return null;
    const conflict = conflictOf(layout, units);
    this.conflicts.add(conflict);
    this.shortOf.set(conflict, again);
    return conflict;
  }

  /** A moved unit that stands over one that has not moved; over a moved one it is never put. */
  private clashIn(layout: Layout): Conflict | null {
    for (const [id, shift] of layout) {
      const unit = this.stage.freeById.get(id);
      if (!unit) continue;
      for (const other of this.stage.free)
        if (other !== unit && this.standing.isClash(unit, shift, other, at(layout, other.id))) return conflictOf(layout, [id, other.id]);
    }
    return null;
  }

  /** Units of a conflict that may still be moved, or moved on. */
  private canMove(node: Node, { members }: Conflict): Unit[] {
    return [...members.keys()].flatMap((id) => {
      const unit = this.stage.freeById.get(id);
      if (!unit || node.done.has(id)) return [];
      return node.layout.has(id) || node.layout.size < this.options.most ? [unit] : [];
    });
  }

  private disjoint(node: Node, conflicts: readonly Conflict[]): Conflict[] {
    const taken = new Set<string>();
    const chosen: Conflict[] = [];
    for (const conflict of conflicts) {
      const free = this.canMove(node, conflict);
      if (free.length === 0) return [conflict];
      if (free.some(({ id }) => taken.has(id))) continue;
      chosen.push(conflict);
      for (const { id } of free) taken.add(id);
    }
    return chosen;
  }

  /** So many more pieces have to move; Infinity: nothing that may move would help. */
  private piecesNeeded(node: Node, blocking: readonly Conflict[]): number {
    const open = blocking.map((conflict) => this.canMove(node, conflict));
    if (open.some((units) => units.length === 0)) return Infinity;
    // One that has been moved once may be moved on, and takes no further piece.
    return open.filter((units) => !units.some(({ id }) => node.layout.has(id))).length;
  }

  private *children(node: Node, conflict: Conflict, hasGrid: boolean): Generator<Node> {
    const short = this.shortOf.get(conflict) ?? null;
    const mends = short && { short, units: [...conflict.members.keys()] };
    for (const unit of this.canMove(node, conflict)) {
      const isSecond = node.layout.has(unit.id);
      const shifts = isSecond ? this.moves.second(node.layout, unit) : this.moves.first(node.layout, unit);
      if (hasGrid && !isSecond) shifts.push(...this.moves.onGrid(unit));
      for (const shift of shifts) {
        if (isSecond && !isOn(at(node.layout, unit.id), shift)) continue;
        if (!this.standing.isClear(unit, shift) || !this.clearsMoved(node, unit, shift)) continue;
        const layout = new Map(node.layout).set(unit.id, shift);
        // A piece that went to its wall, further than half a metre, goes nowhere else.
        const isDone = isSecond || length(shift) > FARTHEST;
        yield { layout, done: isDone ? new Set(node.done).add(unit.id) : node.done, mends };
      }
    }
  }

  /** Clear of what can no longer move, and of everything when nothing more may. */
  private clearsMoved(node: Node, unit: Unit, shift: Point): boolean {
    const moved = node.layout.size + (node.layout.has(unit.id) ? 0 : 1);
    return this.stage.free.every((other) => {
      if (other === unit) return true;
      const isStuck = node.layout.has(other.id) ? node.done.has(other.id) : moved >= this.options.most;
      return !isStuck || !this.standing.isClash(unit, shift, other, at(node.layout, other.id));
    });
  }
}

/** Further away than before, as the way round a corner is. */
const isOn = (before: Point, now: Point): boolean => length(now) > length(before) && length(add(now, { x: -before.x, y: -before.y })) > 0;
