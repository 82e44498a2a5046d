import { describe, expect, it } from 'vitest';
import { addressOf, classroomInAddress, isForLooking, isThisDeviceOnly, newClassroomId } from '#client/session/address.ts';

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

  // RFC 6761 §6.3 (names under localhost) and RFC 1122 §3.2.1.3 (127/8): they never leave the device.
  it.each([
    ['http://127.0.0.1:8787/#room=a', true],
    ['http://127.3.2.1/#room=a', true],
    ['http://localhost:8787/#room=a', true],
    ['http://class.localhost/#room=a', true],
    ['http://[::1]:8787/#room=a', true],
    ['file:///home/class/index.html#room=a', true],
    ['http://192.168.1.20:8787/#room=a', false],
    ['http://127.example.org/#room=a', false],
    ['http://notlocalhost/#room=a', false],
    ['https://class.example.org/#room=a', false],
  ])('%s opens on this device only: %s', (address, isOnly) => {
    expect(isThisDeviceOnly(address)).toBe(isOnly);
  });
});

it('tells an address to look from one to change, with the same kind of id', () => {
  const id = newClassroomId();
  const look = new URL(addressOf(id, 'http://10.0.0.5:8787/#room=other', 'look')).hash;
  expect(look).toBe(`#look=${id}`);
  expect(classroomInAddress(look)).toBe(id);
  expect(isForLooking(look)).toBe(true);
  for (const hash of ['', '#demo', `#room=${id}`, `#look=a&room=${id}`]) expect(isForLooking(hash)).toBe(false);
});
