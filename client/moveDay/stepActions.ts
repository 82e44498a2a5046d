import { readMe } from '../session/me.ts';
import type { Session } from '../session/types.ts';
import type { Day } from './dayOf.ts';
import { sayEarly } from './sayEarly.ts';
import { sayWaiters } from './sayWaiters.ts';
import { CRATES_KEY, orderKey, type StepState, ticksKey } from './stepStates.ts';

/** What people do with the steps of a day; everybody sees it. */
export interface StepActions {
  mark(step: string, state: StepState['state'], why?: string): void;
  /** One place earlier or later in the list. */
  shift(step: string, by: -1 | 1): void;
  /** As it was worked out. */
  resetOrder(): void;
  setCrateKg(kg: number | null): void;
}

export function stepActions(session: Session, day: Day, from: string, to: string): StepActions {
  const numberOf = (id: string): number => day.steps.find(({ step }) => step.id === id)?.number ?? 0;
  return {
    mark(step, state, why = '') {
      const by = readMe()?.initials ?? '';
      const value = state === 'open' ? null : { state, by, at: new Date().toISOString(), ...(why !== '' && { why }) };
      session.commands.changeMoveDay({ [ticksKey(from, to)]: { [step]: value } });
      session.announce(sayMarked(day, step, numberOf(step), state));
    },
    shift(step, by) {
      const list = day.steps.map((one) => one.step.id);
      const at = list.indexOf(step);
      const other = list[at + by];
      if (at === -1 || other === undefined) return;
      list[at] = other;
      list[at + by] = step;
      session.commands.changeMoveDay({ [orderKey(from, to)]: { list } });
      session.announce(`Step ${at + 1} is step ${at + 1 + by} now.`);
    },
    resetOrder() {
      session.commands.changeMoveDay({ [orderKey(from, to)]: { list: null } });
      session.announce('The steps stand in the order that was worked out.');
    },
    setCrateKg(kg) {
      session.commands.changeMoveDay({ [CRATES_KEY]: { kg } });
    },
  };
}

function sayMarked(day: Day, step: string, number: number, state: StepState['state']): string {
  switch (state) {
    case 'done': {
      const one = day.steps.find((other) => other.step.id === step);
      const early = one && sayEarly(day, one);
      return `Step ${number} is done.${early ? ` ${early}` : ''}`;
    }
    case 'doing':
      return `Step ${number} is yours.`;
    case 'open':
      return `Step ${number} is open again.`;
    case 'cannot':
      return `Step ${number} cannot be done. ${sayWaiters(day, step)}`;
  }
}
