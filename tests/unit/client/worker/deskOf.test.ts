import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { deskOf } from '#client/worker/deskOf.ts';
import { judge } from '#client/worker/judge.ts';
import type { Answer, Failure, Question } from '#client/worker/messages.ts';
import { analyse } from '#model/analysis/report.ts';
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
  ...more,
});
function told(message: Answer | Failure): Answer {
  if ('failure' in message) throw new Error(message.failure);
  return message;
}

describe('the desk of a worker', () => {
  it('says what the analyser says in one go', () => {
    const { report, troubles } = told(deskOf()(ask(1, { work: 'settle' })));
    expect(report).toEqual(analyse(room, { tiers: ['live', 'settle'] }));
    expect(troubles).toEqual([]);
  });

  it('runs only the live rules while something is dragged, and leaves out what is slow', () => {
    const { report, aside } = told(deskOf()(ask(1)));
    expect(report).toEqual(analyse(room, { tiers: ['live'] }));
    expect(aside).toBeNull();
    expect(report.measures).not.toHaveProperty('mats');
  });

  it('judges what is dragged as if it stood there', () => {
    const dragged = deskOf()(ask(1, { preview: { piece: 's1', x: -5000, y: 1000, rotation: 0 } }));
    expect(told(dragged).report.answers['survey/outside']).toBe('problem');
  });

  it('keeps the classroom between questions', () => {
    const desk = deskOf();
    desk(ask(1));
    expect(told(desk(ask(2, { classroom: null }))).report.classroom).toBe('Plain room');
  });

  it('compares every rule set beside the report', () => {
    const { aside } = told(deskOf()(ask(1, { work: 'settle' })));
    expect(aside?.places?.[0]?.rules.id).toBe('england');
    expect(aside?.places?.length).toBeGreaterThan(10);
  });

  it('tells a failure in words and answers the next question', () => {
    const desk = deskOf();
    const failed = desk(ask(1, { classroom: { whole: { ...room, arrangements: [] } } }));
    expect('failure' in failed ? failed.failure : '').toMatch(/The checks stopped: .* The drawing is safe/);
    expect(told(desk(ask(2))).sequence).toBe(2);
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
    const { report, troubles } = judge(room, 'a1', 'live', [broken, well]);
    expect(report.answers).toEqual({ 'way/broken': 'cannot-tell', 'way/well': 'does-not-apply' });
    expect(troubles).toEqual(['"Does this break?" could not be worked out (no floor). The other checks stand.']);
  });
});
