import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { tellItem } from '#client/plan/tellItem.ts';
import { slideBy } from '#client/plan/verbs.ts';
import { announcer } from '#client/session/announcer.ts';
import { analyse } from '#model/analysis/report.ts';
import { planSession } from './planSession.ts';

/** A table 0.22 m from the wall, where a way leads to a shelf. Invented. */
function narrowRoom() {
  const session = planSession({
    pieces: [{ id: 't1', kind: 'table', name: 'T', x: 2000, y: 2000, width: 1200, depth: 600 }],
  });
  const finding = {
    key: 'k',
    rule: 'way/width',
    severity: 'must',
    outcome: 'problem',
    subjects: ['t1'],
    leftReason: null,
    message: 'Too narrow.',
    at: { x: 2000, y: 2000 },
  };
  const report = analyse(session.classroom(), { rules: [] });
  session.setReport({ ...report, findings: [finding as unknown as (typeof report.findings)[number]] });
  session.setView({ chosen: { kind: 'piece', id: 't1' } });
  return { session, clear: report };
}

const item = { kind: 'piece', id: 't1' } as const;

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

describe('what is told of a thing', () => {
  it('has what was found of it, where the checks have looked', () => {
    const { session } = narrowRoom();
    tellItem(session, item);
    expect(session.said).toEqual([expect.stringMatching(/Too narrow$/)]);
  });

  it('that was just moved has nothing of its old place, and what is found of the new one once the checks have looked', () => {
    const { session } = narrowRoom();
    session.setThinking(true);
    slideBy(session, item, { x: 500, y: 0 });
    expect(session.said).toEqual([expect.not.stringContaining('Too narrow')]);
    session.setThinking(false);
    expect(session.said).toHaveLength(2);
    expect(session.said[1]).toMatch(/Too narrow$/);
  });

  it('is told once, where nothing is found', () => {
    const { session, clear } = narrowRoom();
    session.setThinking(true);
    slideBy(session, item, { x: 500, y: 0 });
    session.setReport(clear);
    session.setThinking(false);
    expect(session.said).toHaveLength(1);
  });

  it.each<[string, (session: ReturnType<typeof planSession>) => void]>([
    ['something else was said', () => announcer.say('Taken back.')],
    ['it is no longer chosen', (session) => session.setView({ chosen: null })],
    ['the checks take long', () => void vi.advanceTimersByTime(6000)],
    ['it was moved again', (session) => void slideBy(session, item, { x: 100, y: 0 })],
  ])('is not told late when %s', (_, happens) => {
    const { session } = narrowRoom();
    session.setThinking(true);
    tellItem(session, item);
    happens(session);
    const before = session.said.length;
    session.setThinking(false);
    expect(session.said.slice(before).filter((text) => text.includes('Too narrow'))).toHaveLength(_ === 'it was moved again' ? 1 : 0);
  });
});
