import { useClassroom } from '../session/hooks.ts';
import { inPlace } from '../ui/inPlace.ts';
import { type ClassFigure, figuresOfClass } from './figuresOfClass.ts';
import { PageWords, Spans } from './PageWords.tsx';
import { optionLine, sayOption } from './plainWords.ts';
import type { PageSection } from './readRulePage.ts';

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
      {inPlace(section.blocks).map(({ place, entry: block }) => {
        if (block.kind !== 'list') return <PageWords key={place} section={{ heading: section.heading, blocks: [block] }} onRule={onRule} />;
        return (
          <ul key={place} className="page-list">
            {inPlace(block.items).map(({ place: at, entry: spans }) => {
              const line = optionLine(spans, names);
              return (
                <li key={at}>
                  <Spans spans={line?.says ?? spans} onRule={onRule} />
                  {line && defaults && <b className="option-here">{sayOption(line, own, defaults)}</b>}
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
