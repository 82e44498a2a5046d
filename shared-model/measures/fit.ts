import type { Scene, SceneBoard, SceneSide, SceneTray } from '../scene/types.ts';
import type { Material, Placement } from '../schema/types.ts';
import { judgesPracticalLife, trayGapOf } from './order/classOptions.ts';
import { isExempt } from './order/inversions.ts';
import { gapThatFits, nudge } from './order/packing.ts';
import { hasBit } from './order/relation.ts';
import { type Choice, Reshelving } from './order/reshelving.ts';
import { type StandSize, standSize, type WorkTray, workShelves } from './order/workShelves.ts';
import type { OrderMeasure } from './order.ts';
import { standsOnFloor } from './standsOnFloor.ts';

/** A place on a children's board where one material could stand. Lengths in mm. */
export interface FitOption {
  readonly side: SceneSide;
  readonly board: SceneBoard;
  /** Place among the trays of the board from where reading begins: 1 is the first. */
  readonly place: number;
  /** Neighbours on the board as read; null at an end. */
  readonly behind: Material | null;
  readonly ahead: Material | null;
  /** Left end and length of the free stretch, the wanted gap to the neighbours taken off. Below zero: neighbours overlap. */
  readonly from: number;
  readonly free: number;
  /** as it is: nothing else moves; pushed: fits when the trays of the board are moved together; no: does not fit. */
  readonly fits: 'as it is' | 'pushed' | 'no';
  /** What it is short by where it does not fit: in width with all pushed together, in depth, in height. */
  readonly shortBy: { readonly width: number; readonly depth: number; readonly height: number };
  /** Whether it would have to be turned. */
  readonly isTurned: boolean;
  /** After everything it comes after and before everything that comes after it. */
  readonly isInStep: boolean;
  /** What would then stand on the wrong side of it; null: nothing, or something too heavy for a higher board. */
  readonly wrongSide: WrongSide | null;
  /** False where the class does not judge this material's order: then no check says anything of its step. */
  readonly isStepJudged: boolean;
  /** Whether the smallest child takes it from there; true also where that is not known. */
  readonly isInReach: boolean;
  /** The strand whose thread it would cut; null: none. */
  readonly cuts: string | null;
  /** Whether a neighbour in reading order is of its own strand, or nothing of its strand is placed. */
  readonly isBesideItsStrand: boolean;
  /** Whether something of its area, or nothing yet, stands on that side of the shelf. */
  readonly isAmongItsArea: boolean;
  /** Whether it stands there now. */
  readonly isHere: boolean;
  /** What to place so that it stands there: itself first, then what is pushed. Empty where it does not fit. */
  readonly placements: readonly Placement[];
}

/** A material that comes before it but would stand after it, or the other way round. */
interface WrongSide {
  readonly material: Material;
  readonly comes: 'before' | 'after';
}

/**
 * Where would it fit? Every gap on the children's boards for one material of the class, placed or not, the best first:
 * what fits, is in reach, among its own area and in step, cuts no thread, stands beside its strand and pushes nothing.
 * A width that is not known is taken as 300 mm; what else is not known is taken to fit.
 * @returns nothing for an unknown id, for an exercise without a tray and for what stands on the floor
 */
export function whereFits(scene: Scene, order: OrderMeasure, materialId: string): FitOption[] {
  const material = scene.materialById.get(materialId);
  const column = order.relation.columnOf.get(materialId);
  if (!material || column === undefined || material.stands === 'none' || standsOnFloor(material)) return [];
  const now = scene.stands.get(materialId);
  const turned = now?.placement.turned ?? false;
  const gap = trayGapOf(scene.classroom);
  const shelves = workShelves(scene, gap, (tray) => tray.material.id === materialId);
  const isRead = column < order.relation.reading.length;
  const reshelving = new Reshelving(order.relation, shelves, isRead ? [column] : []);
  const others = order.relation.reading.map((tray) => tray.material).filter((other) => other !== material);
  const hasMates = others.some((other) => other.strand !== '' && other.strand === material.strand);
  const [least, most] = reshelving.bounds(column, () => true);
  const ideal = reshelving.nextToItsStrand(column, material.strand);
  const isStepJudged = material.area !== 'practical-life' || judgesPracticalLife(scene.classroom);
  const isForeign = foreignTo(material);

  const asIfAt = ({ slot }: Choice, isTurned: boolean): SceneTray => {
    const { board } = slot.board;
    const on = { piece: board.piece.id, side: board.side, level: board.level?.id ?? null, x: slot.x, y: 0, turned: isTurned };
    const size = isTurned ? { width: material.depth, depth: material.width } : { width: material.width, depth: material.depth };
    return { material, placement: { ...now?.placement, material: materialId, ...on }, board, ...size, height: material.height };
  };
  const describe = (choice: Choice, isTurned: boolean): FitOption => {
    const { slot, rank } = choice;
    const tray = asIfAt(choice, isTurned);
    const size = standSize(material, isTurned);
    const [before, after] = [others[rank - 1], others[rank]];
    const { trays } = slot.board;
    const at = (index: number) => scene.materialById.get(trays[index]?.id ?? '') ?? null;
    const isLtr = shelves.direction === 'ltr';
    const fits = fitOf(choice, size, gap);
    const isInStep = (rank >= least && rank <= most) || isExempt(tray, order.carryNoteKg);
    return {
      side: slot.board.side,
      board: slot.board.board,
      place: (isLtr ? slot.index : trays.length - slot.index) + 1,
      behind: at(isLtr ? slot.index - 1 : slot.index),
      ahead: at(isLtr ? slot.index : slot.index - 1),
      from: slot.from,
      free: slot.free,
      fits,
      shortBy: { width: fits === 'no' ? tooWideBy(choice, size) : 0, depth: slot.tooDeepBy, height: slot.tooTallBy },
      isTurned: isTurned !== turned,
      isInStep,
      wrongSide: isInStep ? null : onWrongSide(order.relation, others, column, rank),
      isStepJudged,
      isInReach: order.isInReach(tray, slot.board.side, slot.board.board, slot.x),
      cuts: cutBy(before, after, material),
      isBesideItsStrand: !hasMates || before?.strand === material.strand || after?.strand === material.strand,
      isAmongItsArea: !isForeign(slot.board.side),
      isHere: now !== undefined && now.board === slot.board.board && indexOf(now) === slot.index,
      placements: fits === 'no' ? [] : placementsOf(choice, size, tray.placement, gap),
    };
  };

  // Both ways round: as it stands, and turned, which a board that is not deep enough may want. The better one of each gap.
  const tried = [turned, !turned].flatMap((isTurned) =>
    reshelving.everyPlace(standSize(material, isTurned)).map((choice) => ({
      option: describe(choice, isTurned),
      gapKey: `${choice.slot.board.side.piece.id}/${choice.slot.board.side.side}/${choice.slot.board.index}/${choice.slot.index}`,
      away: Math.abs(choice.rank - ideal),
    })),
  );
  tried.sort((p, q) => compare(p.option, q.option) || p.away - q.away);
  const seen = new Set<string>();
  return tried.filter(({ gapKey }) => !seen.has(gapKey) && seen.add(gapKey)).map(({ option }) => option);
}

/** The one nearest to the place, of `others` in reading order, between which and it a rank is tried. */
function onWrongSide(
  { before, words, columnOf }: OrderMeasure['relation'],
  others: readonly Material[],
  column: number,
  rank: number,
): WrongSide | null {
  let found: (WrongSide & { readonly away: number }) | null = null;
  others.forEach((material, at) => {
    const its = columnOf.get(material.id);
    const away = at < rank ? rank - 1 - at : at - rank;
    if (its === undefined || (found && found.away <= away)) return;
    if (at >= rank && hasBit(before, words, column, its)) found = { material, comes: 'before', away };
    else if (at < rank && hasBit(before, words, its, column)) found = { material, comes: 'after', away };
  });
  return found;
}

function fitOf({ slot }: Choice, size: StandSize, gap: number): FitOption['fits'] {
  if (slot.tooDeepBy > 0 || slot.tooTallBy > 0) return 'no';
  if (slot.shortBy === 0) return 'as it is';
  const widths = [...slot.board.trays.map((tray) => tray.width), size.width];
  return gapThatFits(widths, slot.board.board.width, gap) === null ? 'no' : 'pushed';
}

/** mm by which the board is too short with all side by side. */
function tooWideBy({ slot }: Choice, size: StandSize): number {
  return Math.max(0, slot.board.trays.reduce((sum, tray) => sum + tray.width, size.width) - slot.board.board.width);
}

/** Itself first, then what is pushed. */
function placementsOf({ slot }: Choice, size: StandSize, placement: Placement, gap: number): Placement[] {
  if (slot.shortBy === 0) return [placement];
  const { trays, board } = slot.board;
  const own: WorkTray = { id: placement.material, x: slot.x, width: size.width, board: slot.board.index, placement };
  const all = [...trays.slice(0, slot.index), own, ...trays.slice(slot.index)];
  const widths = all.map((tray) => tray.width);
  const xs = nudge(all, board.width, gapThatFits(widths, board.width, gap) ?? 0);
  const placedAt = (tray: WorkTray, x: number): Placement[] => (tray.placement ? [{ ...tray.placement, x }] : []);
  const pushed = all.flatMap((tray, i) => (tray === own || xs[i] === tray.x ? [] : placedAt(tray, xs[i] as number)));
  return [...placedAt(own, xs[slot.index] as number), ...pushed];
}

/** Whether only other areas stand on a side of a shelf. */
function foreignTo({ id, area }: Material): (side: SceneSide) => boolean {
  const known = new Map<SceneSide, boolean>();
  return (side) => {
    const kept = known.get(side);
    if (kept !== undefined) return kept;
    const areas = side.boards.flatMap(({ trays }) => trays.flatMap(({ material }) => (material.id === id ? [] : [material.area])));
    const isForeign = area !== '' && areas.length > 0 && !areas.includes(area);
    known.set(side, isForeign);
    return isForeign;
  };
}

/** Trays to the left of a tray on its board. */
const indexOf = (tray: SceneTray): number => tray.board?.trays.indexOf(tray) ?? -1;

function cutBy(before: Material | undefined, after: Material | undefined, material: Material): string | null {
  const strand = before?.strand ?? '';
  return strand !== '' && strand === after?.strand && strand !== material.strand ? strand : null;
}

function compare(p: FitOption, q: FitOption): number {
  const marks = (option: FitOption): boolean[] => [
    option.fits !== 'no',
    option.isInReach,
    option.isAmongItsArea,
    option.isInStep,
    option.cuts === null,
    option.isBesideItsStrand,
    option.fits === 'as it is',
    !option.isTurned,
  ];
  const [a, b] = [marks(p), marks(q)];
  const first = a.findIndex((mark, i) => mark !== b[i]);
  return first === -1 ? 0 : Number(b[first]) - Number(a[first]);
}
