import type { Report } from '#model/analysis/report.ts';
import type { Mats } from '#model/measures/mats.ts';
import type { Classroom } from '#model/schema/types.ts';
import { matGrounds } from '../mats/matGrounds.ts';
import type { Analyst } from '../session/analyst.ts';
import { channelTo, type Moment, type Port } from './channel.ts';
import { joinReports } from './joinReports.ts';
import type { Answer, Aside, Failure } from './messages.ts';
import { shareFindings } from './shareFindings.ts';

/** Quiet time after the last change before the slower checks run (ms). */
const SETTLE_AFTER = 150;

/**
 * Two workers: one follows a drag and is never kept waiting, the other takes the slower checks once it has been quiet.
 * The latest question wins in both: a change ends the slower work on what was before, and an answer to an older question is dropped.
 */
export function createAnalyst(start: () => Port = startWorker): Analyst & { aside(): Aside } {
  const listeners = new Set<() => void>();
  let asked: Moment | null = null;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let settled: Report | null = null;
  let settledAt = 0;
  let report: Report | null = null;
  let aside: Aside = { places: null };
  let trouble: string | null = null;
  let proven: { classroom: Classroom; arrangement: string; mats: Mats } | null = null;

  const hooks = { start, hear, giveUp };
  const quick = channelTo(hooks);
  const slow = channelTo(hooks);

  function hear(message: Answer | Failure): void {
    if ('failure' in message) {
      if (message.sequence !== asked?.sequence) return;
      trouble = message.failure;
      if (message.work !== 'live') settledAt = message.sequence;
    } else if (message.work === 'live') hearLive(message);
    else hearSettled(message);
    tell();
  }

  function hearLive({ sequence, report: live, troubles }: Answer): void {
    // While a drag goes on its answers follow one another; one that comes after its own settled answer is late.
    if (sequence <= settledAt) return;
    showReport(joinReports(live, settled));
    trouble = sayTroubles(troubles);
  }

  function hearSettled({ sequence, report: whole, aside: beside, troubles }: Answer): void {
    settled = whole;
    if (beside) aside = beside;
    if (sequence !== asked?.sequence) return;
    settledAt = sequence;
    showReport(whole);
    trouble = sayTroubles(troubles);
  }

  function showReport(next: Report): void {
    const isSameDrawing = report?.arrangement === next.arrangement;
    report = isSameDrawing && report ? { ...next, findings: shareFindings(report.findings, next.findings) } : next;
  }

  /** What was proven, where it still holds: nothing that the mats hang on is another object. */
  function matsOf(moment: Pick<Moment, 'classroom' | 'arrangement' | 'preview'>): Mats | null {
    if (!proven || moment.preview || proven.arrangement !== moment.arrangement) return null;
    const before = groundsOf(proven.classroom, proven.arrangement);
    return groundsOf(moment.classroom, moment.arrangement).every((value, i) => value === before[i]) ? proven.mats : null;
  }

  function giveUp(why: string): void {
    trouble = `The checks cannot run here (${why || 'the browser refused'}). The drawing works and is kept; load the page again for the checks.`;
    settledAt = asked?.sequence ?? 0;
    tell();
  }

  function tell(): void {
    for (const listener of listeners) listener();
  }

  return {
    ask(classroom, arrangement, preview) {
      if (asked?.classroom === classroom && asked.arrangement === arrangement && asked.preview === preview) return;
      const moment: Moment = {
        sequence: (asked?.sequence ?? 0) + 1,
        classroom,
        arrangement,
        preview,
        mats: matsOf({ classroom, arrangement, preview }),
      };
      asked = moment;
      quick.ask(moment, 'live');
      slow.cancel();
      clearTimeout(timer);
      timer = setTimeout(() => slow.ask(moment, 'settle'), SETTLE_AFTER);
    },
    knowMats(classroom, arrangement, mats) {
      proven = { classroom, arrangement, mats };
      if (!asked || matsOf(asked) !== mats) return;
      asked = { ...asked, sequence: asked.sequence + 1, mats };
      slow.cancel();
      clearTimeout(timer);
      slow.ask(asked, 'settle');
    },
    report: () => report,
    aside: () => aside,
    trouble: () => trouble,
    isThinking: () => asked !== null && settledAt !== asked.sequence,
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    close() {
      clearTimeout(timer);
      quick.close();
      slow.close();
      listeners.clear();
    },
  };
}

const groundsOf = (classroom: Classroom, arrangement: string): readonly unknown[] =>
  matGrounds(classroom, classroom.arrangements.find(({ id }) => id === arrangement)?.pieces);

const sayTroubles = (troubles: readonly string[]): string | null => (troubles.length === 0 ? null : troubles.join(' '));

function startWorker(): Port {
  return new Worker(new URL('./worker.ts', import.meta.url), { type: 'module', name: 'checks' });
}
