import { inHandOrder, type OrderTrouble, orderTroubles } from '#model/analysis/moveDay/handOrder.ts';
import { type MovePlan, type MoveStep, planMove } from '#model/analysis/moveDay/plan.ts';
import { CRATE_KG } from '#model/analysis/moveDay/practice.ts';
import { waitingFor } from '#model/analysis/moveDay/waits.ts';
import type { Arrangement, Classroom } from '#model/schema/types.ts';
import { type MoveNames, moveNames } from './names.ts';
import { openStep, readCrateKg, readHandOrder, readStates, type StepState } from './stepStates.ts';

/** A step at its place in the list. */
export interface DayStep {
  readonly step: MoveStep;
  /** Its number in the list, from 1. */
  readonly number: number;
  readonly state: StepState;
  /** Numbers of the steps it waits for. */
  readonly after: readonly number[];
  /** Numbers of steps that cannot be done and that it waits for, directly or not. */
  readonly heldBy: readonly number[];
  /** What does not work at its place in an order made by hand; null: it works. */
  readonly trouble: OrderTrouble | null;
}

export interface Day {
  readonly plan: MovePlan;
  readonly names: MoveNames;
  readonly steps: readonly DayStep[];
  readonly isHandOrder: boolean;
  readonly crateKg: number;
}

let last: { key: readonly unknown[]; plan: MovePlan } | null = null;

/** Worked out once as long as it is the same move: every tick asks. */
function planOf(classroom: Classroom, from: string, to: string, kg: number): MovePlan {
  const key = [classroom, from, to, kg];
  if (last && key.every((value, i) => value === last?.key[i])) return last.plan;
  const plan = planMove(classroom, from, to, kg);
  last = { key, plan };
  return plan;
}

/**
 * The day as the sheet shows it: the steps in their order, with what was ticked.
 * @param classroom the same object as long as nothing but ticks changed
 */
export function dayOf(classroom: Classroom, from: Arrangement, to: Arrangement, moveDay: unknown): Day {
  const kg = readCrateKg(moveDay) ?? CRATE_KG;
  const plan = planOf(classroom, from.id, to.id, kg);
  const order = readHandOrder(moveDay, from.id, to.id);
  const states = readStates(moveDay, from.id, to.id);
  const list = order ? inHandOrder(plan.steps, order) : plan.steps;
  const troubles = order ? orderTroubles(plan, list) : new Map<string, OrderTrouble>();
  const number = new Map(list.map(({ id }, i) => [id, i + 1]));
  const waits = plan.steps.map(({ id, after }) => ({ id, waits: after }));
  const held = new Map<string, number[]>();
  for (const { id } of list)
    if (states.get(id)?.state === 'cannot')
      for (const later of waitingFor(waits, id)) held.set(later, [...(held.get(later) ?? []), number.get(id) ?? 0]);
  return {
    plan,
    names: moveNames(classroom, plan.from.arrangement, plan.to.arrangement, plan.earlierId),
    isHandOrder: order !== null,
    crateKg: kg,
    steps: list.map((step) => ({
      step,
      number: number.get(step.id) ?? 0,
      state: states.get(step.id) ?? openStep,
      after: step.after.map((id) => number.get(id) ?? 0).sort((p, q) => p - q),
      heldBy: held.get(step.id) ?? [],
      trouble: troubles.get(step.id) ?? null,
    })),
  };
}

/** Numbers of the steps that wait for one, directly or not. */
export function waitersOf({ plan, steps }: Day, id: string): number[] {
  const waiting = new Set(
    waitingFor(
      plan.steps.map((step) => ({ id: step.id, waits: step.after })),
      id,
    ),
  );
  return steps.filter(({ step }) => waiting.has(step.id)).map(({ number }) => number);
}
