import { describe, expect, it } from 'vitest';
import { judgePage } from '#client/pages/judgePage.ts';
import { rulePages } from '#client/pages/rulePages.ts';

describe.each([...rulePages])('the page of %s', (id, page) => {
  const rooms = page.sections.flatMap(({ blocks }) => blocks.flatMap((block) => (block.kind === 'room' ? [block.change] : [])));
  const answer = judgePage({ rule: id, rooms });

  it('shows what its check says of its two rooms: a problem in words, then fine', () => {
    if ('failure' in answer) throw new Error(answer.failure);
    expect(answer.rooms.map(({ report }) => report.answers[id])).toEqual(['problem', 'fine']);
    expect(answer.rooms[0]?.report.findings.some(({ outcome, message }) => outcome === 'problem' && message.length > 20)).toBe(true);
    expect(answer.rooms[1]?.report.findings).toEqual([]);
    expect(answer.sources.length).toBeGreaterThan(0);
  });
  it('can be sent from a worker', () => expect(structuredClone(answer)).toEqual(answer));
});

describe('a page that cannot be judged', () => {
  it('says so in words', () => {
    expect(judgePage({ rule: 'way/nowhere', rooms: [] })).toEqual({ rule: 'way/nowhere', failure: expect.stringContaining('no check') });
    expect(judgePage({ rule: 'way/width', rooms: [{ children: { groups: 'none' } as never }] })).toEqual({
      rule: 'way/width',
      failure: expect.stringContaining('could not be judged'),
    });
  });
});
