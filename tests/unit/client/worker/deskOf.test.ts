import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { changeBetween } from '#client/worker/classroomChange.ts';
import { deskOf } from '#client/worker/deskOf.ts';
import { judging } from '#client/worker/judge.ts';
import type { Answer, Failure, Question } from '#client/worker/messages.ts';
import { analyse } from '#model/analysis/report.ts';
import { RunningAnalysis } from '#model/analysis/running.ts';
import { doesNotApply } from '#model/findings/finding.ts';
import { defineRule } from '#model/rules/rule.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';

const room = plainRoom({ pieces: [{ id: 's1', kind: 'shelf', x: 1000, y: 1000, width: 1200, depth: 320, height: 700 }] });
const ask = (sequence: number, more: Partial<Question> = {}): Question => ({
  sequence,
  classroom: { whole: room },
  arrangement: 'a1',
  preview: null,
  work: 'live',
  mats: null,
  ...more,
});
function told(message: Answer | Failure | null): Answer {
  if (!message) throw new Error('given up');
  if ('failure' in message) throw new Error(message.failure);
  return message;
}

describe('the desk of a worker', () => {
  it('says what the analyser says in one go', async () => {
    const { report, troubles } = told(await deskOf()(ask(1, { work: 'settle' })));
    expect(report).toEqual(analyse(room, { tiers: ['live', 'settle'] }));
    expect(troubles).toEqual([]);
  });

  it('takes over what a proof found of the mats', async () => {
    const mats = { count: 3, upperBound: 3, proven: true, places: [], tile: { width: 1200, depth: 750, gap: 300 } };
    const { report } = told(await deskOf()(ask(1, { work: 'settle', mats })));
    expect(report.measures.mats).toMatchObject({ count: 3, upperBound: 3, proven: true });
    expect(report).toEqual(analyse(room, { tiers: ['live', 'settle'], mats }));
  });

  it('runs only the live rules while something is dragged, and leaves out what is slow', async () => {
    const { report, aside } = told(await deskOf()(ask(1)));
    expect(report).toEqual(analyse(room, { tiers: ['live'] }));
    expect(aside).toBeNull();
    expect(report.measures).not.toHaveProperty('mats');
  });

  it('judges what is dragged as if it stood there', async () => {
    const dragged = await deskOf()(ask(1, { work: 'settle', preview: { piece: 's1', x: -5000, y: 1000, rotation: 0 } }));
    expect(told(dragged).report.answers['survey/outside']).toBe('problem');
  });

  it('keeps the classroom between questions', async () => {
    const desk = deskOf();
    await desk(ask(1));
    expect(told(await desk(ask(2, { classroom: null }))).report.classroom).toBe('Plain room');
  });

  it('compares every rule set beside the report', async () => {
    const { aside } = told(await deskOf()(ask(1, { work: 'settle' })));
    expect(aside?.places?.[0]?.rules.id).toBe('england');
    expect(aside?.places?.length).toBeGreaterThan(10);
  });

  it('tells a failure in words and answers the next question', async () => {
    const desk = deskOf();
    const failed = await desk(ask(1, { classroom: { whole: { ...room, arrangements: [] } } }));
    expect(failed && 'failure' in failed ? failed.failure : '').toMatch(/The checks stopped: .* The drawing is safe/);
    expect(told(await desk(ask(2))).sequence).toBe(2);
  });

  it('names a rule that breaks, answers "cannot tell" for it and goes on with the others', () => {
    const part = { why: '', tier: 'live', sources: [], options: z.strictObject({}), messages: {} } as const;
    const broken = defineRule({
      ...part,
      id: 'way/broken',
      asks: 'Does this break?',
      judge: () => {
        throw new Error('no floor');
      },
    });
    const well = defineRule({ ...part, id: 'way/well', asks: 'Is this well?', judge: () => doesNotApply });
    const steps = judging(room, 'a1', 'live', new RunningAnalysis(), null, [broken, well]);
    let step = steps.next();
    while (!step.done) step = steps.next();
    const { report, troubles } = step.value;
    expect(report.answers).toEqual({ 'way/broken': 'cannot-tell', 'way/well': 'does-not-apply' });
    expect(troubles).toEqual(['"Does this break?" could not be worked out (no floor). The other checks stand.']);
  });
});

describe('a newer message', () => {
  /** A desk that stands still at each pause until it is let go on. */
  function stopped() {
    const waiting: (() => void)[] = [];
    const desk = deskOf(() => new Promise<void>((resolve) => waiting.push(resolve)));
    const isPaused = () => expect.poll(() => waiting.length, { timeout: 20_000 }).toBeGreaterThan(0);
    return { desk, isPaused, goOn: () => waiting.splice(0).forEach((resolve) => void resolve()) };
  }
  // Enough for several pauses: each follows 8 ms of work.
  const full = plainRoom({
    pieces: Array.from({ length: 40 }, (_, i) => ({
      id: `s${i}`,
      kind: 'shelf' as const,
      x: 500 + 700 * (i % 8),
      y: 500 + 900 * Math.floor(i / 8),
      width: 600,
      depth: 320,
      height: 700,
      rotation: i * 7,
    })),
  });

  it('ends the work on the one before, which is not answered, and is answered itself', async () => {
    const { desk, isPaused, goOn } = stopped();
    const older = desk(ask(1, { classroom: { whole: full }, work: 'settle' }));
    await isPaused();
    const newer = desk(ask(2, { classroom: { change: changeBetween(full, { ...full, name: 'Newer' }) } }));
    goOn();
    expect(await older).toBeNull();
    const freely = setInterval(goOn, 1);
    expect(told(await newer)).toMatchObject({ sequence: 2, report: { classroom: 'Newer' } });
    clearInterval(freely);
  });

  it('that cancels ends it too, and the next question is answered as if nothing had been', async () => {
    const { desk, isPaused, goOn } = stopped();
    const older = desk(ask(1, { classroom: { whole: full }, work: 'settle' }));
    await isPaused();
    expect(await desk({ cancel: true })).toBeNull();
    goOn();
    expect(await older).toBeNull();
    const freely = setInterval(goOn, 1);
    const next = told(await desk(ask(2, { classroom: null })));
    clearInterval(freely);
    expect(next.report).toEqual(analyse(full, { tiers: ['live'] }));
  });
});
