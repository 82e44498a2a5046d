// @vitest-environment happy-dom
import { act } from 'react';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { WhenNear } from '#client/ui/WhenNear.tsx';

let root: Root;
/** What the browser tells of a place that is watched. */
let tell: (isIntersecting: boolean) => void;
const words = (): string => document.body.textContent ?? '';

beforeEach(async () => {
  Object.assign(globalThis, { IS_REACT_ACT_ENVIRONMENT: true });
  vi.stubGlobal(
    'IntersectionObserver',
    class {
      constructor(hear: (entries: { isIntersecting: boolean }[]) => void) {
        tell = (isIntersecting) => hear([{ isIntersecting }]);
      }
      observe() {}
      disconnect() {}
    },
  );
  root = createRoot(document.body.appendChild(document.createElement('main')));
  await act(async () =>
    root.render(
      <WhenNear>
        <p>The sources</p>
      </WhenNear>,
    ),
  );
});
afterEach(async () => {
  await act(async () => root.unmount());
  document.body.replaceChildren();
});

describe('a part that stands far below what is seen', () => {
  it('is not there at first, nor while it is far', () => {
    expect(words()).toBe('');
    act(() => tell(false));
    expect(words()).toBe('');
  });

  it('comes when it is nearly seen, and stays', () => {
    act(() => tell(true));
    expect(words()).toBe('The sources');
  });
});
