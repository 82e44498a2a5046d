import type { Report } from '#model/analysis/report.ts';
import type { Classroom } from '#model/schema/types.ts';
import { asideOf } from './asideOf.ts';
import { withChange } from './classroomChange.ts';
import { beginMoment, judgeInMoment, type Moment, measuresFor, reportOf, rulesOf, sayError, withPreview } from './judge.ts';
import type { Answer, Aside, Failure, Question } from './messages.ts';

/** Quiet time after the last change before the slower checks run (ms). */
export const SETTLE_AFTER = 150;
/** How long slower checks run before they look whether a newer question came (ms). */
const BREATH = 12;

/** The worker's desk: takes questions as they come, answers the latest. Apart from the worker so that tests can run it. */
export function deskOf(send: (message: Answer | Failure) => void, wait: (ms: number) => Promise<void> = sleep) {
  let classroom: Classroom | null = null;
  let waiting: Question | null = null;
  let isAtWork = false;
  let settled: Moment | null = null;
  let last: { measures: Report['measures']; aside: Aside } = { measures: {}, aside: { places: null } };

  function take(question: Question): void {
    const part = question.classroom;
    if (part && 'whole' in part) classroom = part.whole;
    else if (part && classroom) classroom = withChange(classroom, part.change);
    // A proof that was asked for is not lost to a later change of nothing.
    waiting = waiting?.prove && !question.prove && question.classroom === null ? { ...question, prove: true } : question;
    if (!isAtWork) void work();
  }

  async function work(): Promise<void> {
    isAtWork = true;
    while (waiting) {
      const question = waiting;
      waiting = null;
      try {
        await answer(question);
      } catch (error) {
        send({
          sequence: question.sequence,
          failure: `The checks stopped: ${sayError(error)}. The drawing is safe; the last answers stand.`,
        });
      }
    }
    isAtWork = false;
  }

  async function answer(question: Question): Promise<void> {
    if (!classroom) return;
    const moment = beginMoment(withPreview(classroom, question.arrangement, question.preview), question.arrangement);
    for (const rule of rulesOf('live')) judgeInMoment(moment, rule);
    post(question, 'live', moment);
    await wait(SETTLE_AFTER);
    if (waiting) return;
    if (!(await judgeSlowly(moment, 'settle'))) return;
    last = { measures: measuresFor(moment, 'settled'), aside: asideOf(moment.measures, moment.troubles) };
    carryProof(moment);
    settled = moment;
    post(question, 'settled', moment);
    if (!question.prove || !(await judgeSlowly(moment, 'asked'))) return;
    post(question, 'proved', moment);
  }

  /** @returns false when a newer question came and the rest was left. */
  async function judgeSlowly(moment: Moment, tier: 'settle' | 'asked'): Promise<boolean> {
    let since = performance.now();
    for (const rule of rulesOf(tier)) {
      judgeInMoment(moment, rule);
      if (performance.now() - since < BREATH) continue;
      await wait(0);
      if (waiting) return false;
      since = performance.now();
    }
    return !waiting;
  }

  /** A proof holds as long as nothing changed since. */
  function carryProof(moment: Moment): void {
    if (settled?.classroom !== moment.classroom || settled.arrangement !== moment.arrangement) return;
    for (const rule of rulesOf('asked')) {
      const proved = settled.judged.get(rule.id);
      if (proved) moment.judged.set(rule.id, proved);
    }
  }

  function post(question: Question, stage: Answer['stage'], moment: Moment): void {
    const isLive = stage === 'live';
    const isSameRoom = settled?.arrangement === moment.arrangement;
    // Of the slower figures the last ones stand until it has been quiet, but never those of another arrangement.
    const measures = isLive ? { ...(isSameRoom && last.measures), ...measuresFor(moment, 'live') } : last.measures;
    send({
      sequence: question.sequence,
      stage,
      report: reportOf(moment, isLive ? settledWithoutProof(settled) : null, measures),
      aside: last.aside,
      troubles: [...moment.troubles.values()],
    });
  }

  return { take };
}

function settledWithoutProof(moment: Moment | null): Moment | null {
  if (!moment) return null;
  const asked = new Set<string>(rulesOf('asked').map((rule) => rule.id));
  return { ...moment, judged: new Map([...moment.judged].filter(([id]) => !asked.has(id))) };
}

const sleep = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));
