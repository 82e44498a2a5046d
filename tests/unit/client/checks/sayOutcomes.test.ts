import { expect, it } from 'vitest';
import { sayOutcomes } from '#client/checks/sayOutcomes.ts';

it('counts all four outcomes, the worst first', () => {
  expect(sayOutcomes({ a: 'fine', b: 'problem', c: 'does-not-apply', d: 'cannot-tell', e: 'fine' })).toBe(
    '5 checks: 1 found something, 1 cannot tell, 2 fine, 1 does not apply',
  );
  expect(sayOutcomes({ a: 'problem', b: 'problem', c: 'does-not-apply', d: 'does-not-apply' })).toBe(
    '4 checks: 2 found something, 2 do not apply',
  );
  expect(sayOutcomes({ a: 'fine' })).toBe('1 check: 1 fine');
});
