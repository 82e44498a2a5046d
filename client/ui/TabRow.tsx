import { type KeyboardEvent, type ReactNode, useRef } from 'react';

interface Props<T extends string> {
  readonly label: string;
  readonly tabs: readonly { readonly id: T; readonly content: ReactNode }[];
  readonly shown: T;
  readonly onShow: (id: T) => void;
}

/** ids of a tab and of what it shows */
export const tabId = (id: string): string => `tab-${id}`;
export const panelId = (id: string): string => `sheet-${id}`;

/** A row of tabs: arrow keys, Home and End move and show; Tab goes on to the sheet. */
export function TabRow<T extends string>({ label, tabs, shown, onShow }: Props<T>) {
  const row = useRef<HTMLDivElement>(null);

  function onKeyDown(event: KeyboardEvent): void {
    const at = tabs.findIndex((tab) => tab.id === shown);
    const to = { ArrowRight: at + 1, ArrowLeft: at - 1, Home: 0, End: tabs.length - 1 }[event.key];
    if (to === undefined) return;
    event.preventDefault();
    const next = tabs[(to + tabs.length) % tabs.length];
    if (!next) return;
    onShow(next.id);
    row.current?.querySelector<HTMLElement>(`#${tabId(next.id)}`)?.focus();
  }

  return (
    <div ref={row} className="tabs" role="tablist" aria-label={label} onKeyDown={onKeyDown}>
      {tabs.map((tab) => (
        <button
          key={tab.id}
          type="button"
          role="tab"
          id={tabId(tab.id)}
          className="tab"
          aria-selected={tab.id === shown}
          aria-controls={tab.id === shown ? panelId(tab.id) : undefined}
          tabIndex={tab.id === shown ? 0 : -1}
          onClick={() => onShow(tab.id)}
        >
          {tab.content}
        </button>
      ))}
    </div>
  );
}
