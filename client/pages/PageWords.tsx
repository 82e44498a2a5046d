import { Fragment } from 'react';
import { inPlace } from '../ui/inPlace.ts';
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
  return inPlace(section.blocks).map(({ place, entry: block }) => {
    if (block.kind === 'room') return null;
    if (block.kind === 'words')
      return (
        <p key={place}>
          <Spans spans={block.spans} onRule={onRule} />
        </p>
      );
    return (
      <ul key={place} className="page-list">
        {inPlace(block.items).map(({ place: line, entry: spans }) => (
          <li key={line}>
            <Spans spans={spans} onRule={onRule} />
          </li>
        ))}
      </ul>
    );
  });
}

/** Names of other checks lead to their pages. */
export function Spans({ spans, onRule }: { spans: readonly Span[]; onRule: (rule: string) => void }) {
  return inPlace(plainSpans(spans)).map(({ place, entry: span }) => {
    if (typeof span === 'string') return <Fragment key={place}>{span}</Fragment>;
    const page = rulePages.get(span.code);
    return page ? (
      <TextLink key={place} onPress={() => onRule(span.code)}>
        “{page.asks}”
      </TextLink>
    ) : (
      <code key={place}>{span.code}</code>
    );
  });
}
