import { expect, it } from 'vitest';
import { askedQuestions } from '#client/settings/askedQuestions.ts';
import { ruleSetOptions, servicesOf } from '#client/text/ruleSets.ts';
import { ruleSets } from '#model/standards/ruleSets.ts';

const categories = (ruleSet: string, asked = {}) => askedQuestions({ ruleSet, asked }).map((question) => question.category);

it('asks only what the chosen rules leave open', () => {
  const open = categories('england');
  expect(open).toContain('walkway_in_room');
  expect(open).not.toContain('toilet');
});

it('keeps an answer in sight that another rule set does not ask for', () => {
  expect(categories('england', { toilet: 'count' })).toContain('toilet');
  expect(categories('england', { 'a thing of ours': 'count' })).toContain('a thing of ours');
});

it('offers every rule set, and keeps one that a file names and nobody knows', () => {
  expect(ruleSetOptions('england')).toHaveLength(ruleSets.length);
  expect(ruleSetOptions('moon').at(-1)).toEqual({ value: 'moon', text: 'moon (not known here)' });
});

it('asks for the kind of service only where the rules have more than one table', () => {
  expect(servicesOf('ireland').length).toBeGreaterThan(1);
  expect(servicesOf('england')).toEqual([]);
});
