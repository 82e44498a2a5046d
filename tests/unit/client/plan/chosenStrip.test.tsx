// @vitest-environment happy-dom
import { act } from 'react';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { ChosenStrip } from '#client/plan/ChosenStrip.tsx';
import { planStoreOf } from '#client/plan/planStore.ts';
import { type PlanSession, planSession } from './planSession.ts';
import { showPart } from './shownPart.tsx';

// happy-dom's window is 1024 wide: a tablet.
let session: PlanSession;
let hide: () => void;
const words = (of: string): string[] => [...document.querySelectorAll(of)].map((one) => one.textContent ?? '');
const press = (word: string): void =>
  act(() => [...document.querySelectorAll('button')].find((button) => button.textContent === word)?.click());

beforeEach(() => {
  session = planSession({ pieces: [{ id: 's1', kind: 'shelf', x: 3000, y: 2000, width: 1200, depth: 320, height: 700 }] });
  session.setView({ chosen: { kind: 'piece', id: 's1' } });
  hide = showPart(session, <ChosenStrip />);
});

afterEach(() => hide());

it('shows the figures in the place of the verbs on a tablet, and the verbs again', async () => {
  expect(words('button')).toContain('Put away');
  expect(words('label')).toEqual([]);
  act(() => planStoreOf(session).set({ hasFigures: true }));
  // Fetched when they are first shown.
  await vi.waitFor(
    async () => {
      await act(() => vi.dynamicImportSettled());
      expect(words('label')).toEqual(['West wall', 'North wall', 'Turned, °', 'Long', 'Deep', 'High', 'Name']);
    },
    { timeout: 15_000 },
  );
  expect(words('button')).toEqual(['Verbs']);
  await vi.waitFor(() => expect(document.activeElement?.textContent).toBe('Verbs'));
  press('Verbs');
  expect(words('label')).toEqual([]);
  expect(words('button')).toContain('Put away');
});

it('says how far it turns', () => {
  expect(words('button')).toContain('Turn 15°');
  press('Turn 15°');
  expect(session.arrangement().pieces[0]?.rotation).toBe(15);
});
