import { expect, it } from 'vitest';
import { sayForeignWays } from '#client/checks/foreignWays.ts';

// A01: ADA Standards 403.5.1 (USA); C01: the statutory framework of England; B17: Approved Document B (England).
it('names the texts of the USA where the class goes by another country, once', () => {
  const letters = new Map([
    ['A01', 'a'],
    ['C01', 'b'],
    ['B17', 'c'],
    ['A02', 'd'],
    ['class rule', 'e'],
  ]);
  expect(sayForeignWays('england', letters)).toBe(
    'No figure of England for ways between furniture is known here: a, d are taken from the USA.',
  );
  expect(sayForeignWays('wales', new Map([['A01', 'a']]))).toBe(
    'No figure of Wales for ways between furniture is known here: a is taken from the USA.',
  );
  for (const ruleSet of ['us-california', 'own', 'somewhere']) expect(sayForeignWays(ruleSet, letters)).toBe(null);
  expect(sayForeignWays('england', new Map([['C01', 'a']]))).toBe(null);
});
