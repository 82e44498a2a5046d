import { z } from 'zod';
import { coordinate, id } from '../schema/primitives.ts';

/** Letters of one remark. */
export const LONGEST_REMARK = 500;

/**
 * A remark as a page that may only look asks for it. Such a page changes nothing itself: the server writes the
 * remark, so nothing but a remark can come of it.
 */
const remarkWish = z.object({
  /** Made by the page: the same wish sent twice is one remark. */
  id: id.min(8),
  /** What it is about; null: a place on the floor. */
  on: id.nullable(),
  /** mm on the plan */
  x: coordinate,
  y: coordinate,
  text: z.string().trim().min(1).max(LONGEST_REMARK),
  by: z.string().max(80),
});
export type RemarkWish = z.output<typeof remarkWish>;

/**
 * Whose remark it is said to be, of one who may only look: a visitor gives any name, so it is told apart from those of
 * the team. "LS (visitor)"
 */
export const visitorName = (by: string): string => (by.trim() === '' ? 'visitor' : `${by.trim()} (visitor)`);

/** @returns null when it is no remark. */
export function readRemarkWish(json: string): RemarkWish | null {
  try {
    const parsed = remarkWish.safeParse(JSON.parse(json));
    return parsed.success ? parsed.data : null;
  } catch {
    return null;
  }
}
