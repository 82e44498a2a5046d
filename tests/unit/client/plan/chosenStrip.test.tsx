// @vitest-environment happy-dom
import { act } from 'react';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { ChosenStrip } from '#client/plan/ChosenStrip.tsx';
import { planStoreOf } from '#client/plan/planStore.ts';
import { SessionProvider } from '#client/session/SessionProvider.tsx';
import { type PlanSession, planSession } from './planSession.ts';

// happy-dom's window is 1024 wide: a tablet.
let session: PlanSession;
let root: Root;
const words = (of: string): string[] => [...document.querySelectorAll(of)].map((one) => one.textContent ?? '');
const press = (word: string): void =>
  act(() => [...document.querySelectorAll('button')].find((button) => button.textContent === word)?.click());

beforeEach(() => {
  Object.assign(globalThis, { IS_REACT_ACT_ENVIRONMENT: true });
  session = planSession({ pieces: [{ id: 's1', kind: 'shelf', x: 3000, y: 2000, width: 1200, depth: 320, height: 700 }] });
  session.setView({ chosen: { kind: 'piece', id: 's1' } });
  const analyst = {
    ask: () => {},
    knowMats: () => {},
    report: () => null,
    aside: () => ({ places: null }),
    trouble: () => null,
    isThinking: () => false,
    subscribe: () => () => {},
    close: () => {},
  };
  const page = document.createElement('div');
  document.body.append(page);
  root = createRoot(page);
  act(() =>
    root.render(
      <SessionProvider opened={{ session, analyst }}>
        <ChosenStrip />
      </SessionProvider>,
    ),
  );
});

afterEach(() => {
  act(() => root.unmount());
  document.body.innerHTML = '';
});

it('shows the figures in the place of the verbs on a tablet, and the verbs again', async () => {
  expect(words('button')).toContain('Put away');
  expect(words('label')).toEqual([]);
  await act(async () => {
    planStoreOf(session).set({ hasFigures: true });
    await vi.dynamicImportSettled();
  });
  expect(words('label')).toEqual(['West wall', 'North wall', 'Turned, °', 'Long', 'Deep', 'High', 'Name']);
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
