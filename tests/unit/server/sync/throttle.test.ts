import { describe, expect, it } from 'vitest';
import { createThrottle } from '#server/sync/throttle.ts';

describe('the throttle', () => {
  it('lets a burst through, then asks to wait as long as the refill takes', () => {
    let now = 1_000;
    const throttle = createThrottle({ perSecond: 10, burst: 5 }, () => now);
    expect(Array.from({ length: 5 }, () => throttle.take(1))).toEqual([0, 0, 0, 0, 0]);
    expect(throttle.take(1)).toBe(100);
    expect(throttle.take(1)).toBe(200);
    now += 200;
    expect(throttle.take(0)).toBe(0);
    now += 60_000;
    expect(Array.from({ length: 6 }, () => throttle.take(1))).toEqual([0, 0, 0, 0, 0, 100]);
  });
});
