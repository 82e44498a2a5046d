import { memo, Suspense, useDeferredValue } from 'react';
import type { Report } from '#model/analysis/report.ts';
import { useClassroom, useIsThinking, useReport } from '../session/hooks.ts';
import { late } from '../ui/late.tsx';
import { WhenNear } from '../ui/WhenNear.tsx';
import { MeasureNext } from './MeasureNext.tsx';
import { Question } from './Question.tsx';
import { openGroups, questionStates } from './sortFindings.ts';
import { sourceLetters } from './sourceLetters.ts';

const loadLeft = () => import('./LeftList.tsx');
const LeftLine = late(() => loadLeft().then((m) => m.LeftLine));
const LeftList = late(() => loadLeft().then((m) => m.LeftList));
const loadRemarks = () => import('./RemarkList.tsx');
const RemarkLine = late(() => loadRemarks().then((m) => m.RemarkLine));
const RemarkList = late(() => loadRemarks().then((m) => m.RemarkList));
const SourceList = late(() => import('./SourceList.tsx').then((m) => m.SourceList));

/** The nine questions in their order, each with what was found; below them what to measure and what was left. */
export function ChecksColumn() {
  // While something is dragged the drawing comes first, the words as soon as there is time.
  const latest = useReport();
  const report = useDeferredValue(latest);
  // Words that are about to be replaced are not the last ones.
  const isThinking = useIsThinking() || report !== latest;
  return (
    <div className="checks">
      <header className="panel-head">
        <h2 tabIndex={-1}>Checks</h2>
        <span className="aside">{report ? sayOpen(report, isThinking) : 'being worked out …'}</span>
      </header>
      {report && <Questions report={report} isThinking={isThinking} />}
    </div>
  );
}

const Questions = memo(function Questions({ report, isThinking }: { report: Report; isThinking: boolean }) {
  const { left, notes } = useClassroom();
  const states = questionStates(report);
  const letters = sourceLetters(states.flatMap((state) => state.problems.map(({ lead }) => lead)));
  const open = states.filter((state) => state.answer === 'problem' || state.answer === 'cannot-tell').length;
  const withRules = states.filter((state) => state.answer !== 'no-rule').length;
  return (
    <>
      {open === 0 && withRules > 0 && !isThinking && (
        <p className="all-answered">
          <b>{withRules === states.length ? 'All nine questions answered' : `All ${withRules} questions with checks answered`}</b>
          <br />
          {new Date().toLocaleDateString('en-GB', { day: 'numeric', month: 'long', year: 'numeric' })}
        </p>
      )}
      {left.length > 0 && (
        <Suspense fallback={null}>
          <LeftLine report={report} />
        </Suspense>
      )}
      {notes.length > 0 && (
        <Suspense fallback={null}>
          <RemarkLine />
        </Suspense>
      )}
      {states.map((state) => (
        <Question key={state.id} {...{ state, letters, isThinking }} />
      ))}
      {notes.length > 0 && (
        <Suspense fallback={null}>
          <RemarkList />
        </Suspense>
      )}
      <MeasureNext report={report} />
      {left.length > 0 && (
        <Suspense fallback={null}>
          <LeftList report={report} />
        </Suspense>
      )}
      <WhenNear>
        <Suspense fallback={null}>
          <SourceList letters={letters} />
        </Suspense>
      </WhenNear>
    </>
  );
});

function sayOpen(report: Report, isThinking: boolean): string {
  const parts = [`${openGroups(report).length} ${isThinking ? 'open so far' : 'open'}`];
  if (isThinking) parts.push('still looking …');
  return parts.join(' · ');
}
