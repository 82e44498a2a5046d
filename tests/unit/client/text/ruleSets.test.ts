import { describe, expect, it } from 'vitest';
import { exitRulesName, exitRulesThatSuit, ruleSetOptions } from '#client/text/ruleSets.ts';

describe('rules for the ways out', () => {
  it('are those of the country whose licence is chosen, where some are known', () => {
    for (const { value } of ruleSetOptions('own')) {
      const suits = exitRulesThatSuit(value);
      const expected = value.startsWith('us-') ? 'us-ibc' : value === 'england' ? 'england-adb' : null;
      expect([value, suits]).toEqual([value, expected]);
    }
    expect(ruleSetOptions('own').filter(({ value }) => exitRulesThatSuit(value) !== null).length).toBeGreaterThan(3);
  });

  it('are named as in the list to choose from', () => {
    expect([exitRulesName('us-ibc'), exitRulesName('england-adb')]).toEqual([
      'International Building Code',
      'England, Approved Document B',
    ]);
  });
});
