import { useRef } from 'react';
import type { Classroom } from '#model/schema/types.ts';

/** Fields that the plan of the day does not hang on: ticks and remarks change all day. */
const ASIDE: ReadonlySet<string> = new Set(['moveDay', 'notes', 'left', 'name', 'current']);

/** The classroom of before as long as nothing else is another object. */
export function sameButTicks(before: Classroom, now: Classroom): boolean {
  if (before === now) return true;
  const keys = new Set([...Object.keys(before), ...Object.keys(now)]);
  for (const key of keys) if (!ASIDE.has(key) && before[key] !== now[key]) return false;
  return true;
}

export function useSteadyClassroom(now: Classroom): Classroom {
  const kept = useRef(now);
  if (!sameButTicks(kept.current, now)) kept.current = now;
  return kept.current;
}
