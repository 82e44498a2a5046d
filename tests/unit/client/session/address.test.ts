import { describe, expect, it } from 'vitest';
import { addressOf, classroomInAddress, newClassroomId } from '#client/session/address.ts';

describe('the address of a classroom', () => {
  it('comes back as it was given out', () => {
    const id = newClassroomId();
    expect(classroomInAddress(new URL(addressOf(id, 'http://10.0.0.5:8787/#room=other')).hash)).toBe(id);
  });

  it.each(['', '#', '#room=', '#room=../../etc', '#room=a b', `#room=${'x'.repeat(65)}`, '#other=abc'])('"%s" names none', (hash) => {
    expect(classroomInAddress(hash)).toBeNull();
  });

  it('cannot be guessed: 128 random bits', () => {
    const ids = new Set(Array.from({ length: 100 }, newClassroomId));
    expect(ids.size).toBe(100);
    for (const id of ids) expect(id).toMatch(/^[0-9a-f]{32}$/);
  });
});
