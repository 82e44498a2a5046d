import { describe, expect, it } from 'vitest';
import { createAnalyst } from '#client/worker/createAnalyst.ts';
import type { Answer, Failure, Question } from '#client/worker/messages.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';

const room = plainRoom();
const report = (name: string): Answer['report'] => ({
  format: 'lowshelf.report',
  version: 1,
  classroom: name,
  arrangement: 'a1',
  answers: {},
  findings: [],
  measures: {},
});

class FakeWorker {
  readonly asked: Question[] = [];
  isGone = false;
  onmessage: ((event: MessageEvent<Answer | Failure>) => void) | null = null;
  onerror: ((event: ErrorEvent) => void) | null = null;
  postMessage(question: Question): void {
    this.asked.push(question);
  }
  terminate(): void {
    this.isGone = true;
  }
  say(sequence: number, more: Partial<Answer> = {}): void {
    const answer: Answer = { sequence, stage: 'live', report: report(`of ${sequence}`), aside: { places: null }, troubles: [], ...more };
    this.onmessage?.({ data: answer } as MessageEvent<Answer>);
  }
  die(): void {
    this.onerror?.({ message: 'out of memory', preventDefault: () => undefined } as ErrorEvent);
  }
}

function started() {
  const workers: FakeWorker[] = [];
  const analyst = createAnalyst(() => {
    const worker = new FakeWorker();
    workers.push(worker);
    return worker as unknown as Worker;
  });
  return { analyst, workers, now: () => workers.at(-1) ?? new FakeWorker() };
}

describe('the analyst on the page', () => {
  it('sends the whole class once, then only what changed', () => {
    const { analyst, now } = started();
    analyst.ask(room, 'a1', null);
    now().say(1);
    analyst.ask({ ...room, name: 'New' }, 'a1', null);
    expect(now().asked[0]?.classroom).toEqual({ whole: room });
    expect(now().asked[1]?.classroom).toMatchObject({ change: { set: { name: 'New' } } });
  });

  it('keeps one live question out; of those that wait only the latest is asked', () => {
    const { analyst, now } = started();
    const at = (x: number) => ({ piece: 's1', x, y: 0, rotation: 0 });
    analyst.ask(room, 'a1', null);
    analyst.ask(room, 'a1', at(1));
    analyst.ask(room, 'a1', at(2));
    expect(now().asked).toHaveLength(1);
    now().say(1);
    expect(now().asked).toHaveLength(2);
    expect(now().asked[1]?.preview?.x).toBe(2);
  });

  it('does not ask the same again', () => {
    const { analyst, now } = started();
    analyst.ask(room, 'a1', null);
    now().say(1);
    analyst.ask(room, 'a1', null);
    expect(now().asked).toHaveLength(1);
  });

  it('drops an answer to an older question', () => {
    const { analyst, now } = started();
    analyst.ask(room, 'a1', null);
    now().say(1);
    analyst.ask({ ...room, name: 'New' }, 'a1', null);
    now().say(1, { stage: 'settled', report: report('late') });
    expect(analyst.report()?.classroom).toBe('of 1');
    expect(analyst.isThinking()).toBe(true);
    now().say(2, { stage: 'settled' });
    expect(analyst.report()?.classroom).toBe('of 2');
    expect(analyst.isThinking()).toBe(false);
  });

  it('starts a worker that died again with the whole class, twice, then says so in words', () => {
    const { analyst, workers, now } = started();
    let told = 0;
    analyst.subscribe(() => {
      told += 1;
    });
    analyst.ask(room, 'a1', null);
    now().die();
    expect(workers).toHaveLength(2);
    expect(workers[0]?.isGone).toBe(true);
    expect(now().asked[0]?.classroom).toEqual({ whole: room });
    now().die();
    now().die();
    expect(workers).toHaveLength(3);
    expect(analyst.trouble()).toMatch(/cannot run here \(out of memory\)/);
    expect(told).toBeGreaterThan(0);
  });

  it('passes on what a check said it could not do', () => {
    const { analyst, now } = started();
    analyst.ask(room, 'a1', null);
    now().say(1, { troubles: ['One check broke.'] });
    expect(analyst.trouble()).toBe('One check broke.');
  });
});
