// @vitest-environment happy-dom
import { act } from 'react';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, expect, it, vi } from 'vitest';
import { silentAnalyst } from '#tests/support/quietDevice.ts';
import { planSession } from '../plan/planSession.ts';

let root: Root | null = null;
afterEach(() => {
  act(() => root?.unmount());
  document.body.replaceChildren();
  vi.restoreAllMocks();
  vi.resetModules();
});

/** The sheet as it is opened on a screen so wide, px. */
async function open(width: number): Promise<void> {
  Object.assign(globalThis, { IS_REACT_ACT_ENVIRONMENT: true });
  vi.spyOn(globalThis, 'matchMedia').mockImplementation(
    (query) =>
      ({
        matches: width >= Number(/min-width: (\d+)px/.exec(query)?.[1] ?? Infinity),
        addEventListener: () => {},
        removeEventListener: () => {},
      }) as unknown as MediaQueryList,
  );
  vi.resetModules();
  const { MaterialsSheet } = await import('#client/sheets/MaterialsSheet.tsx');
  const { SessionContext } = await import('#client/session/SessionProvider.tsx');
  const session = planSession({ materials: [{ id: 'm1', name: 'Rods', area: 'mathematics', strand: 'numbers', step: 1 }] });
  const analyst = { ...silentAnalyst, aside: () => ({ places: null }) };
  const [scene, kept] = [session.scene(), session.kept()];
  root = createRoot(document.body.appendChild(document.createElement('main')));
  await act(async () =>
    root?.render(
      <SessionContext value={{ session: { ...session, scene: () => scene, kept: () => kept, subscribe: () => () => {} }, analyst }}>
        <MaterialsSheet />
      </SessionContext>,
    ),
  );
}

it.each([
  ['a phone', 390, 0],
  ['a tablet', 1024, 0],
  ['a wide screen', 1440, 1],
] as const)('on %s has all threads before the table only where there is room for both', async (_name, width, threads) => {
  await open(width);
  expect(document.querySelectorAll('.thread')).toHaveLength(threads);
  expect(document.querySelector('input[type="search"]')).not.toBeNull();
  if (threads === 0) expect(document.body.textContent).toContain('Show all threads');
});
