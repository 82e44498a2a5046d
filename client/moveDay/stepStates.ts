/** What was said of a step, by whom. */
export interface StepState {
  readonly state: 'open' | 'doing' | 'done' | 'cannot';
  /** initials; empty: not said */
  readonly by: string;
  /** Why it cannot be done. */
  readonly why: string;
}

export const openStep: StepState = { state: 'open', by: '', why: '' };

/** The key of a move's ticks among what is kept of the move day. */
export const ticksKey = (from: string, to: string): string => `${from}>${to}`;
export const orderKey = (from: string, to: string): string => `${from}>${to}:order`;
export const CRATES_KEY = 'crates';

/** What was ticked, by step. What another version wrote there otherwise counts as open. */
export function readStates(moveDay: unknown, from: string, to: string): ReadonlyMap<string, StepState> {
  return new Map(
    Object.entries(recordIn(moveDay, ticksKey(from, to))).flatMap(([step, value]): [string, StepState][] => {
      if (!isRecord(value)) return [];
      const { state, by, why } = value;
      if (state !== 'doing' && state !== 'done' && state !== 'cannot') return [];
      return [[step, { state, by: typeof by === 'string' ? by.slice(0, 3) : '', why: typeof why === 'string' ? why : '' }]];
    }),
  );
}

/** The order that somebody made by hand; null: as worked out. */
export function readHandOrder(moveDay: unknown, from: string, to: string): readonly string[] | null {
  const { list } = recordIn(moveDay, orderKey(from, to));
  return Array.isArray(list) ? list.filter((id) => typeof id === 'string') : null;
}

/** kg in one crate that the class set itself; null: the usual. */
export function readCrateKg(moveDay: unknown): number | null {
  const { kg } = recordIn(moveDay, CRATES_KEY);
  return typeof kg === 'number' && kg >= 1 && kg <= 50 ? kg : null;
}

function recordIn(moveDay: unknown, key: string): Readonly<Record<string, unknown>> {
  const part = isRecord(moveDay) && Object.hasOwn(moveDay, key) ? moveDay[key] : null;
  return isRecord(part) ? part : {};
}

const isRecord = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null && !Array.isArray(value);
