// @vitest-environment happy-dom
import { act } from 'react';
import { afterEach, expect, it, vi } from 'vitest';
import { frontLayout } from '#client/front/frontLayout.ts';
import { TrayVerbs } from '#client/lists/TrayVerbs.tsx';
import { checksBySubject } from '#client/lists/trayChecks.ts';
import { finding, report } from '../checks/finding.ts';
import { planSession } from '../plan/planSession.ts';
import { showPart } from '../plan/shownPart.tsx';

let hide: () => void = () => {};
afterEach(() => hide());

function show(): void {
  const session = planSession({
    pieces: [
      {
        id: 's1',
        kind: 'shelf',
        x: 3000,
        y: 160,
        width: 1200,
        depth: 320,
        height: 700,
        levels: [
          { id: 'top', surface: 640 },
          { id: 'mid', surface: 340 },
          { id: 'low', surface: 40 },
        ],
      },
    ],
    materials: [{ id: 'm1', name: 'Rods', width: 200 }],
    placements: [{ material: 'm1', piece: 's1', level: 'mid', x: 0 }],
  });
  const [side] = session.scene().sides;
  const layout = side && frontLayout(side);
  const tray = layout?.boards.flatMap(({ trays }) => trays).find(({ id }) => id === 'm1');
  if (!side || !layout || !tray) throw new Error('the tray stands on its board');
  const checks = checksBySubject(
    report([
      finding({ key: 'n', severity: 'note', subjects: ['m1'], message: 'Two hands. More of it.' }),
      finding({ key: 'm', severity: 'must', subjects: ['s1'], trays: ['m1'], message: 'Too high.' }),
    ]),
  );
  hide = showPart(session, <TrayVerbs scene={session.scene()} {...{ side, layout, tray, checks }} />);
}

it('each check of a tray is said with its own mark and word, the gravest first', () => {
  show();
  const said = [...document.querySelectorAll('.tray-finding')];
  expect(said.map((one) => one.textContent)).toEqual([' must Too high. Why?', ' note Two hands. Why?']);
  expect(said.map((one) => one.querySelector('.severity')?.className)).toEqual(['severity must', 'severity note']);
});

it('what can be done with the trays of its board is named by a verb, and each choice says how and on which board', async () => {
  show();
  const opener = [...document.querySelectorAll('button')].find(({ textContent }) => textContent === 'Space the trays');
  act(() => opener?.click());
  await vi.waitFor(
    async () => {
      await act(() => vi.dynamicImportSettled());
      expect([...document.querySelectorAll('[role="menuitem"]')].map(({ textContent }) => textContent)).toEqual([
        'Evenly on the middle board',
        'Side by side on the middle board',
      ]);
    },
    { timeout: 15_000 },
  );
});
