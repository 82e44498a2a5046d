import { describe, expect, it } from 'vitest';
import { applyEdits } from '#model/findings/applyEdits.ts';
import { answerOf, findingKey, type RuleFinding } from '#model/findings/finding.ts';
import { fillMessage } from '#model/findings/messages.ts';
import { mm } from '#model/units/quantity.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';

const finding = (outcome: RuleFinding['outcome']): RuleFinding => ({
  outcome,
  severity: 'must',
  messageKey: 'x',
  data: {},
  subjects: ['s1', 'd1'],
});

describe('an answer', () => {
  it('is the gravest of its findings', () => {
    expect(answerOf({ applies: false, findings: [] })).toBe('does-not-apply');
    expect(answerOf({ applies: true, findings: [] })).toBe('fine');
    expect(answerOf({ applies: true, findings: [finding('cannot-tell')] })).toBe('cannot-tell');
    expect(answerOf({ applies: true, findings: [finding('cannot-tell'), finding('problem')] })).toBe('problem');
  });
  it('has a key that outlives a change of wording', () => {
    expect(findingKey('way/width', finding('problem'))).toBe('way/width:s1+d1');
    expect(findingKey('way/width', { subjects: ['s1'], part: 'front' })).toBe('way/width:s1#front');
  });
});

describe('a message', () => {
  it('says quantities in the class units, in whole mm near the threshold', () => {
    expect(fillMessage('{a} of {b}', { a: mm(911.7), b: mm(915) }, 'metric', mm(915))).toBe('0.912 m of 0.915 m');
    expect(fillMessage('{a}', { a: mm(914.4) }, 'imperial')).toBe(`3' 0"`);
  });
  it('that lacks a value is a mistake of the rule', () => expect(() => fillMessage('{a}', {}, 'metric')).toThrow('{a}'));
});

describe('edits on a plain classroom', () => {
  const classroom = plainRoom({
    materials: [{ id: 'm1', name: 'One' }],
    pieces: [{ id: 's1', kind: 'shelf', x: 1, y: 2, rotation: 90, width: 3, depth: 4, levels: [{ id: 'l1', surface: 5 }] }],
    placements: [{ material: 'm1', piece: 's1', level: 'l1', x: 0 }],
  });
  const edited = (...edits: Parameters<typeof applyEdits>[2]) => applyEdits(classroom, 'a1', edits);
  it('move, change and put away without touching the given one', () => {
    const before = JSON.stringify(classroom);
    expect(edited({ do: 'move-piece', piece: 's1', x: 10, y: 20 }).arrangements[0]?.pieces[0]).toMatchObject({
      x: 10,
      y: 20,
      rotation: 90,
    });
    expect(edited({ do: 'change-piece', piece: 's1', set: { width: 9 } }).arrangements[0]?.pieces[0]?.width).toBe(9);
    expect(
      edited({ do: 'change-level', piece: 's1', level: 'l1', set: { surface: 7 } }).arrangements[0]?.pieces[0]?.levels[0]?.surface,
    ).toBe(7);
    expect(edited({ do: 'put-away', material: 'm1' }).arrangements[0]?.placements).toEqual([]);
    expect(JSON.stringify(classroom)).toBe(before);
  });
  it('a tray that is placed again stands once', () => {
    const placement = { material: 'm1', piece: null, side: 'front', level: null, x: 5, y: 5, turned: false } as const;
    expect(edited({ do: 'place', placement }).arrangements[0]?.placements).toEqual([placement]);
  });
  it('on a thing that is gone do nothing', () => {
    expect(edited({ do: 'move-piece', piece: 'gone', x: 1, y: 1 })).toEqual(classroom);
  });
});
