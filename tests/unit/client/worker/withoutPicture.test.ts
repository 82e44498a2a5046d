import { expect, it } from 'vitest';
import { withoutPicture } from '#client/worker/withoutPicture.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';

it('leaves a classroom without a picture as it is', () => {
  const classroom = plainRoom();
  expect(withoutPicture(classroom)).toBe(classroom);
});

it('takes the picture out, and gives the same parts for the same parts', () => {
  const classroom = plainRoom({ room: { picture: { source: 'x'.repeat(1000) } } });
  const bare = withoutPicture(classroom);
  expect(bare.room.picture).toBeNull();
  expect({ ...bare, room: null }).toEqual({ ...classroom, room: null });
  expect(withoutPicture(classroom)).toBe(bare);
  // A piece moved: the room is the same object still, so it is not sent again.
  expect(withoutPicture({ ...classroom, arrangements: [...classroom.arrangements] }).room).toBe(bare.room);
});
