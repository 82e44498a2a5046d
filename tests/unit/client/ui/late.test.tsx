// @vitest-environment happy-dom
import { act, Suspense } from 'react';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { fetchLostStyles, late } from '#client/ui/late.tsx';

interface Props {
  readonly name: string;
}
const Part = ({ name }: Props) => <p>{name} is here</p>;
let root: Root;
let show: (isShown: boolean) => Promise<void>;
/** Fetches that fail until the network is back. */
let isAway: boolean;
const load = vi.fn(async () => {
  if (isAway) throw new TypeError('Failed to fetch');
  return Part;
});
const words = (): string => document.body.textContent ?? '';

beforeEach(async () => {
  Object.assign(globalThis, { IS_REACT_ACT_ENVIRONMENT: true });
  isAway = true;
  vi.spyOn(console, 'warn').mockImplementation(() => undefined);
  const Late = late(load);
  root = createRoot(document.body.appendChild(document.createElement('main')));
  show = (isShown) =>
    act(async () =>
      root.render(
        <>
          <h1>The rest of the sheet</h1>
          <Suspense fallback={null}>{isShown && <Late name="The front" />}</Suspense>
        </>,
      ),
    );
  vi.useFakeTimers({ toFake: ['setInterval', 'clearInterval', 'setTimeout', 'clearTimeout'] });
  await show(true);
});
afterEach(() => {
  vi.useRealTimers();
  act(() => root.unmount());
  document.body.replaceChildren();
});

describe('a part of the page that cannot be fetched', () => {
  it('says so in its own place, and the rest stays', () => {
    expect(words()).toContain('The rest of the sheet');
    expect(words()).toContain('not on this device yet');
  });

  it('comes on a press once the server is in reach, and not before', async () => {
    const press = () => act(async () => document.querySelector('button')?.click());
    await press();
    expect(words()).toContain('not on this device yet');
    isAway = false;
    await press();
    expect(words()).toContain('The front is here');
    expect(words()).not.toContain('not on this device yet');
  });

  it('comes by itself when the network is back', async () => {
    isAway = false;
    await act(async () => void dispatchEvent(new Event('online')));
    expect(words()).toContain('The front is here');
  });

  it('comes by itself once the server is back, which says nothing to the page, and is not asked for any more', async () => {
    await act(async () => vi.advanceTimersByTimeAsync(20_000));
    expect(words()).toContain('not on this device yet');
    isAway = false;
    await act(async () => vi.advanceTimersByTimeAsync(5_000));
    expect(words()).toContain('The front is here');
    const asked = load.mock.calls.length;
    await act(async () => vi.advanceTimersByTimeAsync(60_000));
    expect(load.mock.calls.length).toBe(asked);
    // It is here from now on, wherever it is shown.
    await show(false);
    await show(true);
    expect(words()).toContain('The front is here');
  });
});

describe('a style sheet that could not be fetched', () => {
  const link = (): HTMLLinkElement => {
    const [only, ...more] = document.head.querySelectorAll('link');
    if (!only || more.length > 0) throw new Error('one style sheet stands in the head');
    return only;
  };
  const tell = (what: 'load' | 'error') => act(async () => void link().dispatchEvent(new Event(what)));
  const wait = (ms: number) => act(async () => vi.advanceTimersByTimeAsync(ms));
  beforeEach(() => {
    fetchLostStyles();
    document.head.append(Object.assign(document.createElement('link'), { rel: 'stylesheet' }));
  });
  afterEach(() => link().remove());

  it('is asked for again until it is here, and then no more', async () => {
    const first = link();
    await tell('error');
    await wait(5_000);
    const second = link();
    expect(second).not.toBe(first);
    await tell('error');
    await wait(5_000);
    const third = link();
    expect(third).not.toBe(second);
    await tell('load');
    await wait(60_000);
    expect(link()).toBe(third);
  });

  it('is waited for by a part that comes with the server back, but not by what opens with the server away', async () => {
    await tell('error');
    isAway = false;
    const press = () => act(async () => document.querySelector('button')?.click());
    await press();
    expect(words()).toContain('not on this device yet');
    await tell('load');
    expect(words()).toContain('The front is here');

    await tell('error');
    const Other = late(async () => Part);
    await act(async () => root.render(<Suspense fallback={null}>{<Other name="The list" />}</Suspense>));
    expect(words()).not.toContain('The list is here');
    await wait(1_000);
    expect(words()).toContain('The list is here');
    await tell('load');
  });
});
