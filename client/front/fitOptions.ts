import { type FitOption, whereFits } from '#model/measures/fit.ts';
import { carryNoteKg } from '#model/measures/order/carryNote.ts';
import { inReachOf } from '#model/measures/order/inReach.ts';
import { type OrderMeasure, orderOf } from '#model/measures/order.ts';
import { measureReach, type Reach } from '#model/measures/reach.ts';
import type { Scene } from '#model/scene/types.ts';

const orders = new WeakMap<Scene, OrderMeasure>();

/** The order of what stands in a room, worked out once for it. */
export function orderIn(scene: Scene): OrderMeasure {
  const kept = orders.get(scene);
  if (kept) return kept;
  // Joined as in measuresOf, whose other measures would come to the page for nothing.
  let measured: Reach | null = null;
  const reach = (): Reach => {
    measured ??= measureReach(scene);
    return measured;
  };
  const order = orderOf(scene, (material) => carryNoteKg(reach(), material), inReachOf(reach));
  orders.set(scene, order);
  return order;
}

/** Where a material could go, the best first, its own place left out. */
export const fitOptions = (scene: Scene, id: string): FitOption[] =>
  whereFits(scene, orderIn(scene), id).filter((option) => !option.isHere);

/** The place where it can be put without a second thought: in step, in reach and not on another area's shelf where its own takes it. Null: none. */
export function bestInStep(options: readonly FitOption[]): FitOption | null {
  const good = ({ fits, isInReach }: FitOption): boolean => fits !== 'no' && isInReach;
  const hasOwn = options.some((option) => good(option) && option.isAmongItsArea);
  return options.find((option) => good(option) && option.isInStep && (option.isAmongItsArea || !hasOwn)) ?? null;
}

/** What is offered first: in step and in reach with others slid along if need be, else whatever takes it. Null: no board does. */
export const bestPlace = (options: readonly FitOption[]): FitOption | null =>
  bestInStep(options) ?? options.find(({ fits }) => fits !== 'no') ?? null;

/** The best gap of each board: what a person chooses between. */
export function bestOfBoards(options: readonly FitOption[]): FitOption[] {
  const seen = new Set<FitOption['board']>();
  return options.filter(({ board }) => !seen.has(board) && seen.add(board));
}
