// @vitest-environment happy-dom
import { readFileSync } from 'node:fs';
import { act, createRef } from 'react';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { VerbList } from '#client/ui/VerbList.tsx';

let root: Root;
const opener = createRef<HTMLButtonElement>();
const paper = (): Element | null => document.querySelector('.menu-paper');
const rule = (selector: string): string => {
  const css = readFileSync('client/styles/controls.css', 'utf8');
  return css.match(new RegExp(`(?:^|\\n)${selector.replaceAll('.', '\\.')} \\{([^}]*)\\}`))?.[1] ?? '';
};

beforeEach(() => {
  Object.assign(globalThis, { IS_REACT_ACT_ENVIRONMENT: true });
  root = createRoot(document.body.appendChild(document.createElement('main')));
});
afterEach(async () => {
  await act(async () => root.unmount());
  document.body.replaceChildren();
});

const show = (count: number) =>
  act(async () =>
    root.render(
      <>
        <button type="button" ref={opener}>
          Draw
        </button>
        <VerbList
          label="Draw"
          items={Array.from({ length: count }, (_, i) => ({ id: `v${i}`, text: `Verb ${i}`, run: () => undefined }))}
          opener={opener}
          onClose={() => undefined}
        />
      </>,
    ),
  );

describe('a list of verbs', () => {
  it('has all its verbs, in two columns when there are many', async () => {
    await show(22);
    expect(document.querySelectorAll('[role="menuitem"]')).toHaveLength(22);
    expect(paper()?.classList.contains('long')).toBe(true);
  });

  it('stands in one column when it is short', async () => {
    await show(4);
    expect(paper()?.classList.contains('long')).toBe(false);
  });

  it('scrolls inside its own opaque paper', () => {
    expect(rule('.menu-paper')).toMatch(/overflow-y: auto;[^}]*overscroll-behavior: contain/);
    expect(rule('.menu-paper,\n.dialog-paper')).toContain('background: var(--leaf)');
  });
});
