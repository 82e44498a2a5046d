import type { Point } from '#model/geometry/vec.ts';

const names = ['east', 'south-east', 'south', 'south-west', 'west', 'north-west', 'north', 'north-east'];

/** The way a direction points; the sheet's top is north. */
export const compassWord = ({ x, y }: Point): string => names[(Math.round(Math.atan2(y, x) / (Math.PI / 4)) + 8) % 8] ?? 'north';
