import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { createAnalyst } from '#client/worker/createAnalyst.ts';
import type { Answer, Cancel, Failure, Question } from '#client/worker/messages.ts';
import type { Report } from '#model/analysis/report.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';

const room = plainRoom();
const report = (change: Partial<Report> = {}): Report => ({
  format: 'lowshelf.report',
  version: 1,
  classroom: 'Plain room',
  arrangement: 'a1',
  answers: {},
  findings: [],
  measures: {},
  ...change,
});
const drag = (x: number) => ({ piece: 's1', x, y: 0, rotation: 0 });

class FakeWorker {
  readonly asked: Question[] = [];
  cancelled = 0;
  isGone = false;
  onmessage: ((event: MessageEvent<Answer | Failure>) => void) | null = null;
  onerror: ((event: ErrorEvent) => void) | null = null;
  postMessage(message: Question | Cancel): void {
    if ('cancel' in message) this.cancelled += 1;
    else this.asked.push(message);
  }
  terminate(): void {
    this.isGone = true;
  }
  say(sequence: number, work: Answer['work'], more: Partial<Answer> = {}): void {
    const answer: Answer = { sequence, work, report: report(), aside: null, troubles: [], ...more };
    this.onmessage?.({ data: answer } as MessageEvent<Answer>);
  }
  die(): void {
    this.onerror?.({ message: 'out of memory', preventDefault: () => undefined } as ErrorEvent);
  }
}

/** The first worker follows a drag, the second takes the slower checks. */
function started() {
  const workers: FakeWorker[] = [];
  const analyst = createAnalyst(() => {
    const worker = new FakeWorker();
    workers.push(worker);
    return worker as unknown as Worker;
  });
  const at = (index: number): FakeWorker => workers[index] ?? new FakeWorker();
  return { analyst, workers, quick: at(0), slow: at(1), at };
}

beforeEach(() => vi.useFakeTimers());
afterEach(() => vi.useRealTimers());

describe('the analyst on the page', () => {
  it('asks for the live checks at once and for the slower ones after 150 ms of quiet', () => {
    const { analyst, quick, slow } = started();
    analyst.ask(room, 'a1', drag(1));
    expect(quick.asked.map((q) => q.work)).toEqual(['live']);
    vi.advanceTimersByTime(100);
    analyst.ask(room, 'a1', drag(2));
    vi.advanceTimersByTime(100);
    expect(slow.asked).toEqual([]);
    vi.advanceTimersByTime(50);
    expect(slow.asked.map((q) => [q.work, q.preview?.x])).toEqual([['settle', 2]]);
  });

  it('sends the whole class once to each worker, then only what changed', () => {
    const { analyst, quick } = started();
    analyst.ask(room, 'a1', null);
    quick.say(1, 'live');
    analyst.ask({ ...room, name: 'New' }, 'a1', null);
    expect(quick.asked[0]?.classroom).toEqual({ whole: room });
    expect(quick.asked[1]?.classroom).toMatchObject({ change: { set: { name: 'New' } } });
  });

  it('keeps one question out; of those that wait only the latest is asked', () => {
    const { analyst, quick } = started();
    analyst.ask(room, 'a1', null);
    analyst.ask(room, 'a1', drag(1));
    analyst.ask(room, 'a1', drag(2));
    expect(quick.asked).toHaveLength(1);
    quick.say(1, 'live');
    expect(quick.asked.map((q) => q.preview?.x)).toEqual([undefined, 2]);
  });

  it('does not keep a drag waiting for the slower checks', () => {
    const { analyst, quick, slow } = started();
    analyst.ask(room, 'a1', null);
    quick.say(1, 'live');
    vi.advanceTimersByTime(150);
    expect(slow.asked).toHaveLength(1);
    analyst.ask(room, 'a1', drag(1));
    expect(quick.asked).toHaveLength(2);
  });

  it('cancels the slower checks as soon as something changes, and asks them of the new moment', () => {
    const { analyst, slow, workers } = started();
    analyst.ask(room, 'a1', null);
    vi.advanceTimersByTime(150);
    expect(slow.cancelled).toBe(0);
    analyst.ask(room, 'a1', drag(1));
    expect(slow.cancelled).toBe(1);
    vi.advanceTimersByTime(150);
    expect(slow.asked.map((q) => q.preview?.x)).toEqual([undefined, 1]);
    expect(workers).toHaveLength(2);
  });

  it('ends a check that hears nothing for a second with its worker and starts another', () => {
    const { analyst, slow, at } = started();
    analyst.ask(room, 'a1', drag(1));
    vi.advanceTimersByTime(150);
    vi.advanceTimersByTime(1100);
    analyst.ask(room, 'a1', drag(2));
    expect(slow.isGone).toBe(true);
    slow.say(1, 'settle', { report: report({ classroom: 'from the one that is gone' }) });
    expect(analyst.report()).toBeNull();
    vi.advanceTimersByTime(150);
    expect(at(2).asked.map((q) => [q.work, q.classroom, q.preview?.x])).toEqual([['settle', { whole: room }, 2]]);
    at(2).say(2, 'settle');
    expect(analyst.isThinking()).toBe(false);
  });

  it('hands on what a proof found of the mats for as long as nothing changes that they hang on', () => {
    const { analyst, slow } = started();
    const mats = { count: 3, upperBound: 3, proven: true, places: [], tile: { width: 1200, depth: 750, gap: 300 } };
    analyst.ask(room, 'a1', null);
    vi.advanceTimersByTime(150);
    slow.say(1, 'settle');
    analyst.knowMats(room, 'a1', mats);
    expect(slow.asked.at(-1)).toMatchObject({ work: 'settle', mats });
    slow.say(2, 'settle');
    const ask = (next: typeof room, preview: ReturnType<typeof drag> | null): Question | undefined => {
      analyst.ask(next, 'a1', preview);
      vi.advanceTimersByTime(150);
      const asked = slow.asked.at(-1);
      if (asked) slow.say(asked.sequence, 'settle');
      return asked;
    };
    expect(ask({ ...room, name: 'Another name' }, null)?.mats).toEqual(mats);
    expect(ask(room, drag(1))?.mats).toBeNull();
    expect(ask({ ...room, access: { ...room.access, routeWidth: 900 } }, null)?.mats).toBeNull();
  });

  it('does not ask the same again', () => {
    const { analyst, quick } = started();
    analyst.ask(room, 'a1', null);
    quick.say(1, 'live');
    analyst.ask(room, 'a1', null);
    expect(quick.asked).toHaveLength(1);
  });

  it('lets what the slower checks said stand while a drag goes on, in their order', () => {
    const { analyst, quick, slow } = started();
    analyst.ask(room, 'a1', null);
    vi.advanceTimersByTime(150);
    slow.say(1, 'settle', {
      report: report({ answers: { 'way/width': 'fine', 'sight/hidden': 'problem' }, measures: { mats: 8, ways: 1 } }),
    });
    quick.say(1, 'live');
    expect(analyst.report()?.answers).toEqual({ 'way/width': 'fine', 'sight/hidden': 'problem' });
    analyst.ask(room, 'a1', drag(1));
    quick.say(2, 'live', { report: report({ answers: { 'way/width': 'problem' }, measures: { ways: 2 } }) });
    expect(analyst.report()).toMatchObject({
      answers: { 'way/width': 'problem', 'sight/hidden': 'problem' },
      measures: { mats: 8, ways: 2 },
    });
    expect(Object.keys(analyst.report()?.answers ?? {})).toEqual(['way/width', 'sight/hidden']);
    expect(analyst.isThinking()).toBe(true);
  });

  it('takes nothing over from another arrangement', () => {
    const { analyst, quick, slow } = started();
    analyst.ask(room, 'a1', null);
    vi.advanceTimersByTime(150);
    slow.say(1, 'settle', { report: report({ answers: { 'sight/hidden': 'problem' }, measures: { mats: 8 } }) });
    analyst.ask(room, 'a2', null);
    quick.say(1, 'live');
    quick.say(2, 'live', { report: report({ arrangement: 'a2' }) });
    expect(analyst.report()).toMatchObject({ arrangement: 'a2', answers: {}, measures: {} });
  });

  it('drops a settled answer to an older question as the answer, and waits for the right one', () => {
    const { analyst, quick, slow } = started();
    analyst.ask(room, 'a1', null);
    vi.advanceTimersByTime(150);
    analyst.ask({ ...room, name: 'New' }, 'a1', null);
    quick.say(1, 'live');
    quick.say(2, 'live', { report: report({ classroom: 'New' }) });
    slow.say(1, 'settle', { report: report({ classroom: 'old' }) });
    expect(analyst.report()?.classroom).toBe('New');
    expect(analyst.isThinking()).toBe(true);
    vi.advanceTimersByTime(150);
    slow.say(2, 'settle', { report: report({ classroom: 'New' }) });
    expect(analyst.isThinking()).toBe(false);
  });

  it('starts a worker that died again with the whole class, twice, then says so in words', () => {
    const { analyst, workers, at } = started();
    analyst.ask(room, 'a1', null);
    at(0).die();
    expect(workers).toHaveLength(3);
    expect(at(0).isGone).toBe(true);
    expect(at(2).asked[0]?.classroom).toEqual({ whole: room });
    at(2).die();
    at(3).die();
    expect(workers).toHaveLength(4);
    expect(analyst.trouble()).toMatch(/cannot run here \(out of memory\)/);
  });

  it('passes on what a check said it could not do', () => {
    const { analyst, quick } = started();
    analyst.ask(room, 'a1', null);
    quick.say(1, 'live', { troubles: ['One check broke.'] });
    expect(analyst.trouble()).toBe('One check broke.');
  });
});
