import { expect, it } from 'vitest';
import { sayMats } from '#client/checks/sayMats.ts';
import { report } from './finding.ts';

const withMats = (mats: unknown) => ({ ...report([]), measures: { mats } });

it('says "exactly" only when it is proven', () => {
  expect(sayMats(withMats({ count: 8, upperBound: 12, proven: false }))).toBe('At least 8 mats on the floor at once, at most 12.');
  expect(sayMats(withMats({ count: 8, upperBound: 8, proven: true }))).toBe('Exactly 8 mats on the floor at once.');
});

it('says nothing while nothing was reckoned', () => {
  expect(sayMats(null)).toBeNull();
  expect(sayMats(withMats(null))).toBeNull();
  expect(sayMats(report([]))).toBeNull();
});
