import type { Room } from '#model/schema/types.ts';

/** How the corners are called that stand in for walls which nobody drew (shared-model/document/repair.ts calls them so too). */
export const standIn = (number: number): string => `stand-in-${number}`;

/** Whether the room is only a plain rectangle that stands in until its walls are drawn or typed. */
export const isNotDrawn = ({ corners, openings }: Pick<Room, 'corners' | 'openings'>): boolean =>
  openings.length === 0 && corners.length > 0 && corners.every(({ id }) => id.startsWith('stand-in-'));
