// @vitest-environment happy-dom
import { act } from 'react';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { RulesPart } from '#client/settings/RulesPart.tsx';
import type { Classroom } from '#model/schema/types.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';

let root: Root;
const change = vi.fn();
const words = (): string => document.body.textContent ?? '';
const show = (set: Partial<Classroom>) =>
  act(async () => root.render(<RulesPart classroom={{ ...plainRoom(), ...set }} change={change} changeRoom={() => true} />));

beforeEach(() => {
  Object.assign(globalThis, { IS_REACT_ACT_ENVIRONMENT: true });
  change.mockReset();
  root = createRoot(document.body.appendChild(document.createElement('main')));
});
afterEach(async () => {
  await act(async () => root.unmount());
  document.body.replaceChildren();
});

it('says where the ways out go by another country than the licence, and changes them when told to', async () => {
  await show({ ruleSet: 'england', exitRules: 'us-ibc' });
  expect(words()).toContain('The ways out still go by International Building Code');
  const button = [...document.querySelectorAll('button')].find(({ textContent }) => textContent?.startsWith('Let them go by England'));
  await act(async () => button?.click());
  expect(change).toHaveBeenCalledWith({ exitRules: 'england-adb' });
});

it('says only that they are chosen apart where the two agree, or nothing of that country is known', async () => {
  await show({ ruleSet: 'england', exitRules: 'england-adb' });
  expect(words()).not.toContain('still go by');
  await show({ ruleSet: 'wales', exitRules: 'us-ibc' });
  expect(words()).not.toContain('still go by');
  expect(words()).toContain('Ways out have rules of their own');
});
