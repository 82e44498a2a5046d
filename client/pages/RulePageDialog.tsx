import { useMemo } from 'react';
import { questions } from '#model/findings/finding.ts';
import { questionIds, questionOf } from '../checks/sortFindings.ts';
import { useReportOf } from '../session/hooks.ts';
import { Button } from '../ui/Button.tsx';
import { Dialog } from '../ui/Dialog.tsx';
import { TextLink } from '../ui/TextLink.tsx';
import { InThisClass } from './InThisClass.tsx';
import { inReadingOrder } from './inReadingOrder.ts';
import { OptionList } from './OptionList.tsx';
import { PageRoom } from './PageRoom.tsx';
import { PageSource } from './PageSource.tsx';
import { PageWords } from './PageWords.tsx';
import type { PageSection } from './readRulePage.ts';
import { rulePages } from './rulePages.ts';
import { usePageAnswer } from './usePageAnswer.ts';
import '../styles/rulePage.css';

interface Props {
  readonly rule: string;
  readonly onRule: (rule: string) => void;
  readonly onClose: () => void;
}

/** Why a check asks what it asks: its page, with its two rooms drawn and judged here and now. */
export function RulePageDialog({ rule, onRule, onClose }: Props) {
  const page = rulePages.get(rule);
  const close = (
    <div className="verbs">
      <Button kind="strong" onPress={onClose}>
        Back to the sheet
      </Button>
    </div>
  );
  if (!page)
    return (
      <Dialog title="Why?" isOpen onClose={onClose}>
        <p>This check has no page in this version.</p>
        {close}
      </Dialog>
    );
  const question = questionIds.find((id) => id === questionOf(rule));
  return (
    <Dialog title={page.asks} isOpen onClose={onClose} isWide>
      <div className="rule-page">
        <div className="page-head">
          <p className="aside">{question ? `One of the checks behind “${questions[question]}”` : ''}</p>
          <TextLink aria-label="Back to the sheet, from the top" onPress={onClose}>
            Back
          </TextLink>
        </div>
        <Sections key={rule} rule={rule} written={page.sections} onClose={onClose} onRule={onRule} />
      </div>
      <AnotherCheck rule={rule} onRule={onRule} />
      {close}
    </Dialog>
  );
}

function Sections({ rule, written, onClose, onRule }: Pick<Props, 'rule' | 'onClose' | 'onRule'> & { written: readonly PageSection[] }) {
  const sections = useMemo(() => inReadingOrder(written), [written]);
  const rooms = useMemo(
    () => sections.flatMap((section) => section.blocks.flatMap((block) => (block.kind === 'room' ? [block.change] : []))),
    [sections],
  );
  const answer = usePageAnswer(useMemo(() => ({ rule, rooms }), [rule, rooms]));
  const words = (section: PageSection) => <PageWords section={section} onRule={onRule} />;
  const roomOf = ({ blocks }: PageSection) => blocks.find((block) => block.kind === 'room')?.change;
  const isRoom = (section: PageSection | undefined): boolean => section !== undefined && roomOf(section) !== undefined;
  const room = (section: PageSection) => {
    const change = roomOf(section);
    return (
      <section key={section.heading} className="page-room">
        <h3>{section.heading}</h3>
        {words(section)}
        {change && <PageRoom rule={rule} change={change} answer={answer} index={rooms.indexOf(change)} />}
      </section>
    );
  };
  const pair = sections.filter(isRoom);
  return (
    <>
      {sections.map((section) => {
        // The two rooms stand side by side, where the first of them comes.
        if (section === pair[0])
          return (
            <div key="rooms" className="page-rooms">
              {pair.map(room)}
            </div>
          );
        if (isRoom(section)) return null;
        return (
          <section key={section.heading}>
            <h3>{section.heading}</h3>
            {section.heading === 'Options' ? (
              <OptionList
                rule={rule}
                section={section}
                defaults={answer && 'defaults' in answer ? answer.defaults : null}
                onRule={onRule}
              />
            ) : (
              words(section)
            )}
            {section.heading === 'Source' && <PageSource sources={answer && 'sources' in answer ? answer.sources : []} />}
            {section.heading === 'Why' && <InThisClass rule={rule} onClose={onClose} />}
          </section>
        );
      })}
    </>
  );
}

function AnotherCheck({ rule, onRule }: Pick<Props, 'rule' | 'onRule'>) {
  // In the order in which the sheet asks them.
  const order = useReportOf((report) => Object.keys(report?.answers ?? {}).join(' ')).split(' ');
  const pages = [...rulePages].sort(([p], [q]) => order.indexOf(p) - order.indexOf(q));
  return (
    <div className="field another-check">
      <label htmlFor="another-check">Another check</label>
      <select id="another-check" value={rule} onChange={(event) => onRule(event.target.value)}>
        {questionIds.map((id) => (
          <optgroup key={id} label={questions[id]}>
            {pages
              .filter(([each]) => questionOf(each) === id)
              .map(([each, { asks }]) => (
                <option key={each} value={each}>
                  {asks}
                </option>
              ))}
          </optgroup>
        ))}
      </select>
    </div>
  );
}
