import type { PageSection } from './readRulePage.ts';

/** What is worked out in detail, for who wants to know. */
const DETAIL = 'What is worked out';

/**
 * The sections as somebody reads who asks why: what it asks in short, why it matters, the two rooms, and only then how it is
 * worked out, from which source, and the rest.
 */
export function inReadingOrder(sections: readonly PageSection[]): PageSection[] {
  const [asks, ...others] = sections;
  const [short, ...detail] = asks?.blocks ?? [];
  if (!asks || !short || detail.length === 0) return [...sections];
  const isRoom = ({ blocks }: PageSection): boolean => blocks.some(({ kind }) => kind === 'room');
  const isEarly = (section: PageSection): boolean => section.heading === 'Why' || isRoom(section);
  return [
    { ...asks, blocks: [short] },
    ...others.filter(isEarly),
    { heading: DETAIL, blocks: detail },
    ...others.filter((section) => !isEarly(section)),
  ];
}
