import type { ReactNode } from 'react';

/** A part of the sheet that scrolls by itself: named, and reached by Tab so that the arrow keys scroll it. */
export function ScrollPart({ className, label, children }: { className: string; label: string; children: ReactNode }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling part without a control inside could not be scrolled by keyboard
    <section className={`${className} scroll-part`} aria-label={label} tabIndex={0}>
      {children}
    </section>
  );
}
