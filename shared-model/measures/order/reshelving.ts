import type { SceneBoard, SceneTray } from '../../scene/types.ts';
import { gapThatFits, nudge } from './packing.ts';
import { forEachBit, hasBit, type OrderRelation } from './relation.ts';
import { type Slot, slotsOn } from './slots.ts';
import { readWorkSide, type StandSize, type WorkBoard, type WorkShelves, type WorkTray } from './workShelves.ts';

/** A board that would have to be longer, deeper or higher. */
export interface Shortage {
  readonly material: string;
  readonly board: SceneBoard;
  readonly what: 'width' | 'depth' | 'height';
  /** mm */
  readonly by: number;
}

/** Tells whether a pair (columns) has to hold afterwards; the others hold where they can. */
export type MustHold = (first: number, second: number) => boolean;

/** A slot with its rank in the reading order of all shelves. */
export interface Choice {
  readonly slot: Slot;
  readonly rank: number;
  /** mm between neighbours when the board has to be pushed; null: nothing else moves */
  readonly pushGap: number | null;
  readonly short: Omit<Shortage, 'material'> | null;
}

/** Ranks at which a thing may come, and the one that suits best. */
export interface Wanted {
  readonly least: number;
  readonly most: number;
  readonly ideal: number;
}
/** Whether a thing may be put there for other reasons, such as reach. */
export type IsAllowed = (slot: Slot) => boolean;
const anywhere: IsAllowed = () => true;

/** The reading order while trays are put back one by one. */
export class Reshelving {
  readonly #relation: OrderRelation;
  readonly #shelves: WorkShelves;
  /** rank by column; -1: not on a shelf now */
  readonly #rank: Int32Array;
  /** How many trays stand on a shelf now. */
  #count = 0;
  readonly #boards: readonly { readonly board: WorkBoard; readonly work: WorkShelves['sides'][number] }[];

  constructor(relation: OrderRelation, shelves: WorkShelves, moving: readonly number[]) {
    this.#relation = relation;
    this.#shelves = shelves;
    this.#boards = shelves.sides.flatMap((work) => work.boards.map((board) => ({ board, work })));
    this.#rank = new Int32Array(relation.columnOf.size).fill(-1);
    const gone = new Set(moving);
    for (let position = 0; position < relation.reading.length; position++) if (!gone.has(position)) this.#rank[position] = this.#count++;
  }

  /** Between which ranks a thing may be put so that what must hold holds, and the rest as far as it can. */
  bounds(column: number, mustHold: MustHold): [number, number] {
    const { before, words, reading } = this.#relation;
    let [hardLeast, hardMost, softLeast, softMost] = [0, this.#count, 0, this.#count];
    forEachBit(before, words, column, (first) => {
      const rank = this.#rank[first] as number;
      if (rank === -1) return;
      softLeast = Math.max(softLeast, rank + 1);
      if (rank >= hardLeast && mustHold(first, column)) hardLeast = rank + 1;
    });
    for (let later = 0; later < reading.length; later++) {
      const rank = this.#rank[later] as number;
      if (rank === -1 || !hasBit(before, words, later, column)) continue;
      softMost = Math.min(softMost, rank);
      if (rank < hardMost && mustHold(column, later)) hardMost = rank;
    }
    const least = Math.max(hardLeast, Math.min(softLeast, hardMost));
    return [least, softMost >= least ? Math.min(softMost, hardMost) : hardMost];
  }

  /** Behind what of its strand comes before it, else ahead of what comes after, else behind what it builds on. */
  nextToItsStrand(column: number, strand: string): number {
    const { before, words, reading } = this.#relation;
    let [last, lastOfStrand, firstOfStrand] = [-1, -1, -1];
    forEachBit(before, words, column, (first) => {
      const rank = this.#rank[first] as number;
      last = Math.max(last, rank);
      if (rank > lastOfStrand && reading[first]?.material.strand === strand) lastOfStrand = rank;
    });
    if (lastOfStrand !== -1) return lastOfStrand + 1;
    for (let later = 0; later < reading.length; later++) {
      const rank = this.#rank[later] as number;
      if (rank === -1 || reading[later]?.material.strand !== strand || !hasBit(before, words, later, column)) continue;
      firstOfStrand = firstOfStrand === -1 ? rank : Math.min(firstOfStrand, rank);
    }
    return firstOfStrand === -1 ? last + 1 : firstOfStrand;
  }

  /** Every place on every board, with its rank, in walk order. */
  everyPlace(size: StandSize): Choice[] {
    return this.#boardsAround(0, 0, Infinity)
      .sort((p, q) => p.at - q.at)
      .flatMap(({ board, work, start }) =>
        slotsOn(board, work, size, this.#shelves).map((slot) => ({ slot, rank: start + slot.rankInSide, pushGap: null, short: null })),
      );
  }

  /** The place nearest to the ideal rank that has room; one that is not allowed only if there is no other. */
  choose(size: StandSize, { least, most, ideal }: Wanted, holds: (choice: Choice) => boolean, isAllowed: IsAllowed): Choice | null {
    const near = this.#boardsAround(ideal, least, most);
    const inRange = ({ board, work, start }: Near, isAllowed: IsAllowed): Choice[] =>
      slotsOn(board, work, size, this.#shelves)
        .map((slot) => ({ slot, rank: start + slot.rankInSide, pushGap: null, short: null }))
        .filter(({ rank, slot }) => rank >= least && rank <= most && isAllowed(slot))
        .sort((p, q) => Math.abs(p.rank - ideal) - Math.abs(q.rank - ideal));
    for (const [may, isSqueezed] of [
      [isAllowed, false],
      [isAllowed, true],
      [anywhere, false],
      [anywhere, true],
    ] as const) {
      for (const place of near) {
        const fit = this.#fitting(inRange(place, may), place.board, size, isSqueezed, holds);
        if (fit) return fit;
      }
    }
    const [nearest] = near
      .flatMap((place) => inRange(place, anywhere).slice(0, 1))
      .map((choice) => ({ ...choice, short: shortage(choice.slot) }))
      .sort((p, q) => p.short.by - q.short.by);
    return nearest ?? null;
  }

  #fitting(choices: readonly Choice[], board: WorkBoard, size: StandSize, isSqueezed: boolean, holds: (choice: Choice) => boolean) {
    const fits = choices.filter(({ slot }) => slot.tooDeepBy === 0 && slot.tooTallBy === 0);
    const asItIs = fits.find((choice) => choice.slot.shortBy === 0 && holds(choice));
    if (asItIs) return asItIs;
    const widths = [...board.trays.map((tray) => tray.width), size.width];
    const pushGap = gapThatFits(widths, board.board.width, this.#shelves.gap);
    if (pushGap === null || (!isSqueezed && pushGap < this.#shelves.gap)) return null;
    return fits.map((choice) => ({ ...choice, pushGap })).find(holds) ?? null;
  }

  /**
   * On a side read in columns a new tray, and any push, may change which column a tray is in: only what keeps every
   * pair that must hold is taken. In rows the rank alone decides.
   */
  holds(column: number, { slot, pushGap }: Choice, size: StandSize, mustHold: MustHold): boolean {
    const { board, index, x } = slot;
    if (board.side.piece.reading === 'rows') return true;
    const work = this.#shelves.sides.find(({ side }) => side === board.side);
    if (!work) return false;
    const { before, words, columnOf } = this.#relation;
    const now = readWorkSide(work, this.#shelves.direction).map((tray) => columnOf.get(tray.id) ?? -1);
    const tried: WorkTray = { id: '', x, width: size.width, board: board.index, placement: null };
    const trays = [...board.trays.slice(0, index), tried, ...board.trays.slice(index)];
    const xs = pushGap === null ? trays.map((tray) => tray.x) : nudge(trays, board.board.width, pushGap);
    const pushed = trays.map((tray, i) => ({ ...tray, x: xs[i] as number }));
    const others = work.boards.filter((other) => other !== board);
    const then = readWorkSide({ ...work, boards: [...others, { ...board, trays: pushed }] }, this.#shelves.direction).map(
      (tray) => columnOf.get(tray.id) ?? column,
    );
    const isBroken = (first: number, second: number) => hasBit(before, words, first, second) && mustHold(second, first);
    // A pair that stood the wrong way round before may stay so: it is another tray's to move.
    return then.every((first, i) =>
      then.slice(i + 1).every((second) => {
        if (!isBroken(first, second)) return true;
        return first !== column && second !== column && now.indexOf(first) < now.indexOf(second);
      }),
    );
  }

  put(column: number, tray: SceneTray, size: StandSize, { slot, rank, pushGap }: Choice): WorkTray {
    const { board, index } = slot;
    const placed: WorkTray = {
      id: tray.material.id,
      x: slot.x,
      width: size.width,
      board: board.index,
      placement: { ...tray.placement, piece: board.board.piece.id, side: board.board.side, level: board.board.level?.id ?? null, y: 0 },
    };
    board.trays.splice(index, 0, placed);
    if (pushGap !== null) {
      const xs = nudge(board.trays, board.board.width, pushGap);
      board.trays.forEach((other, i) => {
        other.x = xs[i] as number;
      });
    }
    this.#count++;
    if (board.side.piece.reading === 'columns') {
      this.#readAgain();
      return placed;
    }
    for (let other = 0; other < this.#rank.length; other++) {
      const its = this.#rank[other] as number;
      if (its >= rank) this.#rank[other] = its + 1;
    }
    this.#rank[column] = rank;
    return placed;
  }

  #readAgain(): void {
    const read = this.#shelves.sides.flatMap((work) => readWorkSide(work, this.#shelves.direction));
    read.forEach((tray, rank) => {
      const column = this.#relation.columnOf.get(tray.id);
      if (column !== undefined) this.#rank[column] = rank;
    });
  }

  /** Boards on which a rank from `least` to `most` can be had, the nearest to `ideal` first. */
  #boardsAround(ideal: number, least: number, most: number): Near[] {
    const near: (Near & { away: number })[] = [];
    let start = 0;
    let above = 0;
    let side: WorkShelves['sides'][number] | null = null;
    for (const { board, work } of this.#boards) {
      if (work !== side) {
        start += above;
        above = 0;
        side = work;
      }
      const isRows = work.side.piece.reading === 'rows';
      const from = isRows ? start + above : start;
      const to = isRows ? from + board.trays.length : start + work.boards.reduce((sum, other) => sum + other.trays.length, 0);
      above += board.trays.length;
      if (to < least || from > most) continue;
      // Behind the last tray of a board is nearer to it than ahead of the first tray of the next one.
      const away = ideal > to ? ideal - to : ideal < from ? from - ideal : ideal === from && board.trays.length > 0 && ideal > 0 ? 0.5 : 0;
      near.push({ board, work, start, away, at: near.length });
    }
    return near.sort((p, q) => p.away - q.away);
  }
}

interface Near {
  readonly board: WorkBoard;
  readonly work: WorkShelves['sides'][number];
  /** rank of the first tray of its side */
  readonly start: number;
  /** its place in walk order */
  readonly at: number;
}

function shortage(slot: Slot): Omit<Shortage, 'material'> {
  const board = slot.board.board;
  if (slot.tooDeepBy > 0) return { board, what: 'depth', by: slot.tooDeepBy };
  if (slot.tooTallBy > 0) return { board, what: 'height', by: slot.tooTallBy };
  return { board, what: 'width', by: slot.boardShortBy };
}
