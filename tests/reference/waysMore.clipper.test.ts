import { describe } from 'vitest';
import { randomWayRoom } from '#tests/support/randomWayRoom.ts';
import { runs } from '#tests/support/runs.ts';
import { waysAgainstClipper } from '#tests/support/waysAgainstClipper.ts';

// As ways.clipper.test.ts, of other rooms: a file of its own, so that two workers share them.
describe('ways of more rooms against bisection on offsets', () => {
  waysAgainstClipper(randomWayRoom, { from: 2, step: 2, rooms: runs(70, 1000) });
});
