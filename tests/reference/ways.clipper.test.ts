import { describe } from 'vitest';
import { randomWayRoom } from '#tests/support/randomWayRoom.ts';
import { runs } from '#tests/support/runs.ts';
import { waysAgainstClipper } from '#tests/support/waysAgainstClipper.ts';

// Widths of ways against clipper2, a general-purpose library of polygon clipping and offsetting.
describe('ways against bisection on offsets', () => {
  waysAgainstClipper(randomWayRoom, { from: 1, step: 2, rooms: runs(140, 1000) });
});
