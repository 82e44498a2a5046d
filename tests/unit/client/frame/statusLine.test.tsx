// @vitest-environment happy-dom
import { readFileSync } from 'node:fs';
import { act } from 'react';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { Dialogs } from '#client/frame/Dialogs.tsx';
import { type FrameDialogs, useFrameDialogs } from '#client/frame/frameDialogs.ts';
import { StatusLine } from '#client/frame/StatusLine.tsx';
import { announcer } from '#client/session/announcer.ts';
import { SessionContext } from '#client/session/SessionProvider.tsx';
import type { View } from '#client/session/types.ts';
import { silentAnalyst } from '#tests/support/quietDevice.ts';
import { planSession } from '../plan/planSession.ts';

let root: Root;
let isSmall: boolean;
let goTo: (sheet: View['sheet']) => void;
let dialogs: FrameDialogs;
function Asker() {
  dialogs = useFrameDialogs();
  return null;
}
const said = (): string => document.querySelector('.said')?.textContent?.trim() ?? '';
const touch = (pointerType: string) =>
  act(async () => void document.body.dispatchEvent(new PointerEvent('pointerdown', { pointerType, bubbles: true })));

beforeEach(async () => {
  Object.assign(globalThis, { IS_REACT_ACT_ENVIRONMENT: true });
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
  isSmall = true;
  vi.spyOn(globalThis, 'matchMedia').mockImplementation(() => ({ matches: isSmall }) as MediaQueryList);
  root = createRoot(document.body.appendChild(document.createElement('main')));
  const plan = planSession();
  const kept = plan.kept();
  let heard = (): void => {};
  const subscribe = (listener: () => void) => {
    heard = listener;
    return () => {};
  };
  const session = { ...plan, subscribe, kept: () => kept };
  goTo = (sheet) => {
    plan.setView({ sheet });
    heard();
  };
  const analyst = { ...silentAnalyst, aside: () => ({ places: null }) };
  await act(async () =>
    root.render(
      <SessionContext value={{ session, analyst }}>
        <Dialogs>
          <Asker />
          <StatusLine />
        </Dialogs>
      </SessionContext>,
    ),
  );
  await act(async () => announcer.say('Shelf 7 stands against the west wall.'));
});
afterEach(async () => {
  await act(async () => root.unmount());
  document.body.replaceChildren();
  vi.useRealTimers();
});

describe('what was just done', () => {
  it('is said, and goes after eight seconds', async () => {
    expect(said()).toBe('Shelf 7 stands against the west wall.');
    await act(async () => vi.advanceTimersByTime(8000));
    expect(said()).toBe('');
  });

  it('goes with the next touch of a small screen, where it lies on the sheet, and says what that touch does', async () => {
    await touch('touch');
    expect(said()).toBe('');
    await act(async () => announcer.say('Turned.'));
    expect(said()).toBe('Turned.');
  });

  it('stays for a mouse, and on a screen with room for it below the sheet', async () => {
    await touch('mouse');
    isSmall = false;
    await touch('touch');
    expect(said()).toBe('Shelf 7 stands against the west wall.');
  });

  it('goes with the sheet it was said on, unless it was said in going', async () => {
    await act(async () => goTo('places'));
    expect(said()).toBe('');
    await act(async () => {
      announcer.say('Marked on the front of shelf 5.');
      goTo('room');
    });
    expect(said()).toBe('Marked on the front of shelf 5.');
  });

  it('goes when a dialog opens over it, and what is said in one stays when it is closed', async () => {
    await act(async () => dialogs.open('survey'));
    expect(said()).toBe('');
    await act(async () => announcer.say('The room is on the sheet.'));
    await act(async () => dialogs.close());
    expect(said()).toBe('The room is on the sheet.');
  });

  it('lies below the sheet, on a small screen above where the work is kept, and the sheet ends above both', () => {
    const [all = '', small = ''] = readFileSync('client/styles/frame.css', 'utf8').split('@media (max-width: 899px)');
    expect(all).toMatch(/\.said \{[^}]*bottom: 3px;[^}]*pointer-events: none;[^}]*position: fixed/);
    expect(small).toMatch(/\.said \{\s+bottom: 22px;/);
    expect(small).toMatch(/\.desk \{\s+padding: 0 4px calc\(var\(--below\) \+ 2px\)/);
  });
});

describe('where the work is kept', () => {
  const keptLine = () => document.querySelector('.kept-line')?.textContent?.trim();

  it('stands below the sheet of a screen that does not show the title block whole, whatever is said', async () => {
    expect(keptLine()).toBe('kept here only');
    await act(async () => announcer.say('Turned.'));
    expect(keptLine()).toBe('kept here only');
  });
});
