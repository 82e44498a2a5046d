import { useClassroom } from '../session/hooks.ts';
import { type ClassFigure, figuresOfClass } from './figuresOfClass.ts';
import { PageWords, Spans } from './PageWords.tsx';
import type { PageSection, Span } from './readRulePage.ts';

interface Props {
  readonly rule: string;
  readonly section: PageSection;
  /** null: not known yet */
  readonly defaults: Readonly<Record<string, unknown>> | null;
  readonly onRule: (rule: string) => void;
}

/** What a class may set: each option with its default and what it is here. */
export function OptionList({ rule, section, defaults, onRule }: Props) {
  const classroom = useClassroom();
  const own = classroom.options[rule] ?? {};
  const figures = figuresOfClass(rule, classroom);
  const lists = section.blocks.filter((block) => block.kind === 'list');
  const names = Object.keys(defaults ?? {});
  if (lists.length === 0)
    return (
      <>
        <PageWords section={section} onRule={onRule} />
        <Figures figures={figures} />
      </>
    );
  return (
    <>
      {section.blocks.map((block, i) => {
        if (block.kind !== 'list')
          // biome-ignore lint/suspicious/noArrayIndexKey: a page never changes while it is shown
          return <PageWords key={i} section={{ heading: section.heading, blocks: [block] }} onRule={onRule} />;
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: as above
          <ul key={i} className="page-list">
            {block.items.map((spans, j) => {
              const option = spans.flatMap((span) => (typeof span === 'string' ? [] : [span.code])).find((name) => names.includes(name));
              return (
                // biome-ignore lint/suspicious/noArrayIndexKey: as above
                <li key={j}>
                  <Spans spans={spans} onRule={onRule} />
                  {option !== undefined && defaults && (
                    <b className="option-here">{sayOption(own[option], defaults[option], unitIn(spans))}</b>
                  )}
                </li>
              );
            })}
          </ul>
        );
      })}
      <Figures figures={figures} />
    </>
  );
}

function Figures({ figures }: { figures: readonly ClassFigure[] }) {
  if (figures.length === 0) return null;
  return (
    <ul className="page-list">
      {figures.map(({ name, value, isDefault }) => (
        <li key={name}>
          {name}: <b>{value}</b>
          {isDefault ? ', the default' : ', set by the class'}
        </li>
      ))}
    </ul>
  );
}

/** "`angle` (15 degrees): …" -> "degrees" */
function unitIn(spans: readonly Span[]): string {
  const text = spans.filter((span) => typeof span === 'string').join('');
  return /\([\d.]+ ([^)\d]+)\)/.exec(text)?.[1] ?? '';
}

function sayOption(own: unknown, byDefault: unknown, unit: string): string {
  const say = (value: unknown): string => (typeof value === 'number' && unit !== '' ? `${value} ${unit}` : sayValue(value));
  if (own === undefined || own === byDefault) return `In this class: ${say(byDefault)}, the default.`;
  return `In this class: ${say(own)}, a class rule; the default is ${say(byDefault)}.`;
}

function sayValue(value: unknown): string {
  if (value === null || value === undefined) return 'none';
  if (value === true) return 'yes';
  if (value === false) return 'no';
  return typeof value === 'object'
    ? JSON.stringify(value)
        .replaceAll(/["{}[\]]/g, ' ')
        .trim()
    : String(value);
}
