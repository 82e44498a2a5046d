import type { Report } from '#model/analysis/report.ts';
import { ChecksBehind } from '../checks/ChecksBehind.tsx';
import { LeftList } from '../checks/LeftList.tsx';
import { leftAsTheyAre, questionOf, questionStates, unanswered } from '../checks/sortFindings.ts';
import { WhyLink } from '../checks/WhyLink.tsx';
import { useFrameDialogs } from '../frame/frameDialogs.ts';
import { useIsThinking } from '../session/hooks.ts';
import { MayChange } from '../session/MayChange.tsx';
import { TextLink } from '../ui/TextLink.tsx';
import { SettleCard } from './SettleCard.tsx';
import { sayNothingOpen } from './sayNothingOpen.ts';

/** What stands between the room and its children, and what has to be asked first. */
export function WhatToSettle({ report }: { report: Report }) {
  const dialogs = useFrameDialogs();
  const state = questionStates(report).find(({ id }) => id === 'places');
  const problems = state?.problems ?? [];
  const unknown = unanswered(report).filter((finding) => questionOf(finding.rule) === 'places');
  const left = leftAsTheyAre(report).filter(({ lead }) => questionOf(lead.rule) === 'places').length;
  const isThinking = useIsThinking();
  const open = problems.length + unknown.length;
  return (
    <>
      <header className="panel-head">
        <h2>What to settle</h2>
        <span className="aside">{isThinking ? (open === 0 ? 'still looking …' : `${open} so far · still looking …`) : `${open} open`}</span>
      </header>
      {open === 0 && <p className="question-answer">{sayNothingOpen(state?.answer ?? 'no-rule', left, isThinking)}</p>}
      <ul>
        {problems.map(({ lead }) => (
          <SettleCard key={lead.key} finding={lead} />
        ))}
      </ul>
      {unknown.length > 0 && (
        <>
          <h3 className="question">Ask or enter first</h3>
          <ul className="measure-next">
            {unknown.map((finding) => (
              <li key={finding.key}>
                <b>Not known:</b> {finding.missing.length === 0 ? finding.message : finding.missing.join('; ')}{' '}
                <WhyLink rule={finding.rule} about={finding.message} />
              </li>
            ))}
          </ul>
        </>
      )}
      <LeftList report={report} question="places" />
      {state && <ChecksBehind asks={state.asks} answers={state.answers} />}
      <MayChange>
        <p className="verbs settle-verbs">
          <TextLink onPress={() => dialogs.open('class')}>Change children, dates, adults or rules</TextLink>
        </p>
      </MayChange>
    </>
  );
}
