/** How much one connection may send: a refill per second, and how much it may have saved up. */
export interface Allowance {
  readonly perSecond: number;
  readonly burst: number;
}

export interface Throttle {
  /** @returns ms to wait before reading on; 0: none. */
  take(amount: number): number;
}

/** A bucket that refills evenly. What goes over it is read later, not lost: a page that sends too fast is slowed down. */
export function createThrottle({ perSecond, burst }: Allowance, now: () => number = Date.now): Throttle {
  let left = burst;
  let last = now();
  return {
    take: (amount) => {
      const time = now();
      left = Math.min(burst, left + ((time - last) / 1000) * perSecond) - amount;
      last = time;
      return left >= 0 ? 0 : Math.ceil((-left / perSecond) * 1000);
    },
  };
}
