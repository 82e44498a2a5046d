import { VERSION } from './classroom.ts';

/** One step from version n to n+1. Works on plain JSON, before the schema reads it. */
export type Migration = (file: Record<string, unknown>) => Record<string, unknown>;

/** from-version -> step. Version 1 is the first, so there is none yet; the walk below is what a later version joins. */
const migrations: ReadonlyMap<number, Migration> = new Map();

/**
 * Brings an older file up to this version, step by step.
 * @throws never; a missing step is returned as `stuckAt`.
 */
export function migrate(
  file: Record<string, unknown>,
  from: number,
  steps: ReadonlyMap<number, Migration> = migrations,
  to: number = VERSION,
): { file: Record<string, unknown>; stuckAt: number | null } {
  let current = file;
  for (let version = from; version < to; version++) {
    const step = steps.get(version);
    if (!step) return { file: current, stuckAt: version };
    current = { ...step(current), version: version + 1 };
  }
  return { file: current, stuckAt: null };
}
