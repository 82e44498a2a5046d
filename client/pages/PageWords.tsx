import { Fragment } from 'react';
import { TextLink } from '../ui/TextLink.tsx';
import { plainSpans } from './plainWords.ts';
import type { PageSection, Span } from './readRulePage.ts';
import { rulePages } from './rulePages.ts';

interface Props {
  readonly section: PageSection;
  readonly onRule: (rule: string) => void;
}

/** The paragraphs and lists of one part of a page. */
export function PageWords({ section, onRule }: Props) {
  return section.blocks.map((block, i) => {
    if (block.kind === 'room') return null;
    if (block.kind === 'words')
      return (
        // biome-ignore lint/suspicious/noArrayIndexKey: a page never changes while it is shown
        <p key={i}>
          <Spans spans={block.spans} onRule={onRule} />
        </p>
      );
    return (
      // biome-ignore lint/suspicious/noArrayIndexKey: as above
      <ul key={i} className="page-list">
        {block.items.map((spans, j) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: as above
          <li key={j}>
            <Spans spans={spans} onRule={onRule} />
          </li>
        ))}
      </ul>
    );
  });
}

/** Names of other checks lead to their pages. */
export function Spans({ spans, onRule }: { spans: readonly Span[]; onRule: (rule: string) => void }) {
  return plainSpans(spans).map((span, i) => {
    // biome-ignore lint/suspicious/noArrayIndexKey: a page never changes while it is shown
    if (typeof span === 'string') return <Fragment key={i}>{span}</Fragment>;
    const page = rulePages.get(span.code);
    return page ? (
      // biome-ignore lint/suspicious/noArrayIndexKey: as above
      <TextLink key={i} onPress={() => onRule(span.code)}>
        “{page.asks}”
      </TextLink>
    ) : (
      // biome-ignore lint/suspicious/noArrayIndexKey: as above
      <code key={i}>{span.code}</code>
    );
  });
}
