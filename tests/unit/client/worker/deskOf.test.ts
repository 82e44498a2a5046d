import { describe, expect, it } from 'vitest';
import { deskOf } from '#client/worker/deskOf.ts';
import type { Answer, Failure, Question } from '#client/worker/messages.ts';
import { analyse } from '#model/analysis/report.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';

const room = plainRoom({ pieces: [{ id: 's1', kind: 'shelf', x: 1000, y: 1000, width: 1200, depth: 320, height: 700 }] });
const ask = (sequence: number, more: Partial<Question> = {}): Question => ({
  sequence,
  classroom: { whole: room },
  arrangement: 'a1',
  preview: null,
  prove: false,
  ...more,
});

/** A desk whose waiting ends when the test says so. */
function deskUnderTest() {
  const said: (Answer | Failure)[] = [];
  const waits: (() => void)[] = [];
  const desk = deskOf(
    (message) => said.push(message),
    () => new Promise((resolve) => waits.push(resolve)),
  );
  const goOn = async (): Promise<void> => {
    for (const resolve of waits.splice(0)) resolve();
    for (let i = 0; i < 20; i++) await Promise.resolve();
  };
  return { desk, said, goOn, stages: () => said.map((m) => ('stage' in m ? `${m.sequence} ${m.stage}` : `${m.sequence} failed`)) };
}

async function untilSettled(goOn: () => Promise<void>, stages: () => string[], last: string): Promise<void> {
  for (let i = 0; i < 500 && !stages().includes(last); i++) await goOn();
}

describe('the desk of the worker', () => {
  it('answers live at once and settles after a quiet time', async () => {
    const { desk, goOn, stages } = deskUnderTest();
    desk.take(ask(1));
    expect(stages()).toEqual(['1 live']);
    await untilSettled(goOn, stages, '1 settled');
    expect(stages()).toEqual(['1 live', '1 settled']);
  });

  it('says in the end what the analyser says in one go', async () => {
    const { desk, said, goOn, stages } = deskUnderTest();
    desk.take(ask(1));
    await untilSettled(goOn, stages, '1 settled');
    const last = said.at(-1);
    if (!last || !('report' in last)) throw new Error('the desk gave no report');
    const whole = analyse(room, { tiers: ['live', 'settle'] });
    expect(last.report.answers).toEqual(whole.answers);
    expect(last.report.findings).toEqual(whole.findings);
    expect(last.report.measures).toEqual(whole.measures);
  });

  it('leaves the slower checks of an older question when a newer one comes: the latest wins', async () => {
    const { desk, goOn, stages } = deskUnderTest();
    desk.take(ask(1));
    desk.take(ask(2, { classroom: null, preview: { piece: 's1', x: 2000, y: 1000, rotation: 0 } }));
    desk.take(ask(3, { classroom: null, preview: { piece: 's1', x: 3000, y: 1000, rotation: 0 } }));
    await untilSettled(goOn, stages, '3 settled');
    expect(stages()).toEqual(['1 live', '3 live', '3 settled']);
  });

  it('judges what is dragged as if it stood there', async () => {
    const { desk, said } = deskUnderTest();
    desk.take(ask(1, { preview: { piece: 's1', x: -5000, y: 1000, rotation: 0 } }));
    const first = said[0];
    if (!first || !('report' in first)) throw new Error('the desk gave no report');
    expect(first.report.answers['survey/outside']).toBe('problem');
  });

  it('tells a failure in words and goes on working', async () => {
    const { desk, said, goOn, stages } = deskUnderTest();
    desk.take(ask(1, { classroom: { whole: { ...room, arrangements: [] } } }));
    await goOn();
    const failed = said[0];
    expect(failed && 'failure' in failed ? failed.failure : '').toMatch(/The checks stopped: .* The drawing is safe/);
    desk.take(ask(2));
    expect(stages()).toContain('2 live');
  });
});
