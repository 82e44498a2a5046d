// @vitest-environment happy-dom
import { act } from 'react';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { OpenClassroom } from '#client/frame/OpenClassroom.tsx';
import { announcer } from '#client/session/announcer.ts';
import type { openSession } from '#client/session/openSession.ts';
import { silentAnalyst } from '#tests/support/quietDevice.ts';

const analystOf = () => ({ ...silentAnalyst, aside: () => ({ places: null }) });
const opening = vi.fn<typeof openSession>();
let root: Root;
const page = (): string => document.body.textContent ?? '';

beforeEach(async () => {
  Object.assign(globalThis, { IS_REACT_ACT_ENVIRONMENT: true });
  vi.useFakeTimers();
  opening.mockReset();
  opening.mockRejectedValue(new Error('The server does not answer.'));
  const place = document.createElement('div');
  document.body.append(place);
  root = createRoot(place);
  await act(async () => root.render(<OpenClassroom id="room" openWith={opening} analystOf={analystOf} />));
});

afterEach(() => {
  act(() => root.unmount());
  document.body.replaceChildren();
  vi.useRealTimers();
});

it('that could not be opened is tried again by itself, with a network at once, and when somebody asks', async () => {
  expect(page()).toContain('The server does not answer.');
  expect(opening).toHaveBeenCalledTimes(1);
  await act(async () => vi.advanceTimersByTime(15_000));
  expect(opening).toHaveBeenCalledTimes(2);
  await act(async () => void dispatchEvent(new Event('online')));
  expect(opening).toHaveBeenCalledTimes(3);
  await act(async () => [...document.querySelectorAll('button')].find(({ textContent }) => textContent === 'Try now')?.click());
  expect(opening).toHaveBeenCalledTimes(4);
  expect(page()).toContain('could not be opened');
});

it('is not tried again once it is left', async () => {
  act(() => root.unmount());
  await act(async () => vi.advanceTimersByTime(60_000));
  dispatchEvent(new Event('online'));
  expect(opening).toHaveBeenCalledTimes(1);
});

it('says nothing of it any more once it is left; what was said in going to the next stays', async () => {
  const { announce } = opening.mock.calls[0]?.[1] ?? {};
  announce?.('Saved as larch-room.lowshelf.json.');
  expect(announcer.latest().text).toBe('Saved as larch-room.lowshelf.json.');
  await act(async () => root.render(<OpenClassroom key="next" id="next" openWith={opening} analystOf={analystOf} />));
  expect(announcer.latest().text).toBe('');
  announce?.('A print that came too late.');
  expect(announcer.latest().text).toBe('');

  opening.mock.calls.at(-1)?.[1].announce('Turned.');
  announcer.say('The room stands as it was measured.');
  await act(async () => root.render(<OpenClassroom key="third" id="third" openWith={opening} analystOf={analystOf} />));
  expect(announcer.latest().text).toBe('The room stands as it was measured.');
});
