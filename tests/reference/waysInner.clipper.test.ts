import { describe } from 'vitest';
import { roomInRoom } from '#tests/support/roomInRoom.ts';
import { runs } from '#tests/support/runs.ts';
import { waysAgainstClipper } from '#tests/support/waysAgainstClipper.ts';

// Rooms that stand in rooms, against clipper2 as in ways.clipper.test.ts.
describe('ways into a room in a room against bisection on offsets', () => {
  waysAgainstClipper(roomInRoom, { from: 1, step: 1, rooms: runs(70, 500) });
});
