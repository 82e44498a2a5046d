import { expect, it } from 'vitest';
import { sayMats } from '#client/checks/sayMats.ts';
import { report } from './finding.ts';

const withMats = (mats: unknown) => ({ ...report([]), measures: { mats } });

it('says "exactly" only when it is proven', () => {
  expect(sayMats(withMats({ count: 8, upperBound: 12, proven: false }))).toBe('At least 8 mats on the floor at once, at most 12.');
  expect(sayMats(withMats({ count: 8, upperBound: 8, proven: true }))).toBe('Exactly 8 mats on the floor at once.');
});

it('takes over what a running proof has found, where that is more', () => {
  const known = withMats({ count: 15, upperBound: 31, proven: false });
  expect(sayMats(known, { count: 16, upperBound: 24 })).toBe('At least 16 mats on the floor at once, at most 24.');
  expect(sayMats(known, { count: 14, upperBound: 40 })).toBe('At least 15 mats on the floor at once, at most 31.');
});

it('says nothing while nothing was reckoned', () => {
  expect(sayMats(null)).toBeNull();
  expect(sayMats(withMats(null))).toBeNull();
  expect(sayMats(report([]))).toBeNull();
});
