import type { SceneBody } from '../../scene/types.ts';
import type { MovePlan, MoveStep, Wait } from './plan.ts';
import { clashes } from './units.ts';

/** What does not work at a step's place in an order made by hand. */
export interface OrderTrouble {
  /** Steps it waits for that come later, and why. */
  readonly later: readonly Wait[];
  /** Ids of pieces that stand there at that time. */
  readonly inTheWay: readonly string[];
}

/** The steps in an order made by hand: those it does not know come right after the step before them in the worked out order. */
export function inHandOrder(steps: readonly MoveStep[], order: readonly string[]): MoveStep[] {
  const known = new Map(steps.map((step) => [step.id, step]));
  const list = [...new Set(order)].flatMap((id) => known.get(id) ?? []);
  const placed = new Set(list);
  steps.forEach((step, i) => {
    if (placed.has(step)) return;
    const before = steps.slice(0, i).findLast((one) => placed.has(one));
    list.splice(before ? list.indexOf(before) + 1 : 0, 0, step);
    placed.add(step);
  });
  return list;
}

/** Goes through the steps in an order and says which no longer work, and why. Empty: the order works. */
export function orderTroubles(
  plan: Pick<MovePlan, 'units' | 'floor' | 'sequence'>,
  steps: readonly MoveStep[],
): ReadonlyMap<string, OrderTrouble> {
  const { units, floor, sequence } = plan;
  const done = new Set<string>();
  const now = units.map((unit) => unit.from);
  const troubles = new Map<string, OrderTrouble>();
  const all = new Set(steps.map(({ id }) => id));
  for (const step of steps) {
    const later = step.waits.filter(({ step: wait }) => !done.has(wait) && all.has(wait) && wait !== step.id);
    const inTheWay = new Set<string>();
    if (step.unit !== null) {
      const unit = units[step.unit];
      const next: readonly SceneBody[] =
        step.does === 'aside' ? (sequence.places.get(step.unit) ?? []) : step.does === 'out' ? [] : (unit?.to ?? []);
      if (!unit?.isRug)
        now.forEach((bodies, other) => {
          if (other === step.unit || units[other]?.isRug) return;
          for (const body of bodies) if (next.some((one) => clashes(one, body)) && !step.overlaps.includes(body.id)) inTheWay.add(body.id);
        });
      if (step.does === 'aside') for (const body of floor.staying) if (next.some((one) => clashes(one, body))) inTheWay.add(body.id);
      now[step.unit] = next;
    }
    done.add(step.id);
    if (later.length > 0 || inTheWay.size > 0) troubles.set(step.id, { later, inTheWay: [...inTheWay] });
  }
  return troubles;
}
