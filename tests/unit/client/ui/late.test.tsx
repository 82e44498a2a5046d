// @vitest-environment happy-dom
import { act, Suspense } from 'react';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { late } from '#client/ui/late.tsx';

interface Props {
  readonly name: string;
}
const Part = ({ name }: Props) => <p>{name} is here</p>;
let root: Root;
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
  await act(async () =>
    root.render(
      <>
        <h1>The rest of the sheet</h1>
        <Suspense fallback={null}>
          <Late name="The front" />
        </Suspense>
      </>,
    ),
  );
});
afterEach(() => {
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
});
