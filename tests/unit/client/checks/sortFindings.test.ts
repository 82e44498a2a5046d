import { describe, expect, it } from 'vitest';
import { openGroups, questionStates, unanswered } from '#client/checks/sortFindings.ts';
import { questions } from '#model/findings/finding.ts';
import { finding, report } from './finding.ts';

const stateOf = (of: ReturnType<typeof report>, id: string) => questionStates(of).find((state) => state.id === id);

describe('the nine questions', () => {
  it('stand in their order, whatever order the findings come in', () => {
    expect(questionStates(report([])).map((state) => state.asks)).toEqual(Object.values(questions));
    expect(Object.values(questions)).toHaveLength(9);
  });

  it('are not shown as answered while no rule looks at them', () => {
    expect(stateOf(report([]), 'sight')?.answer).toBe('no-rule');
    expect(stateOf(report([], { 'sight/hidden': 'does-not-apply' }), 'sight')?.answer).toBe('does-not-apply');
    expect(stateOf(report([], { 'sight/hidden': 'fine' }), 'sight')?.answer).toBe('fine');
  });

  it('put must before should before note', () => {
    const found = [
      finding({ key: 'a', severity: 'note' }),
      finding({ key: 'b', severity: 'must' }),
      finding({ key: 'c', severity: 'should' }),
    ];
    expect(stateOf(report(found, { 'way/width': 'problem' }), 'way')?.problems.map(({ lead }) => lead.key)).toEqual(['b', 'c', 'a']);
  });

  it('gather what cannot be told apart from the problems', () => {
    const unknown = finding({ key: 'u', outcome: 'cannot-tell', missing: ['the height of shelf 4'] });
    const state = stateOf(report([unknown], { 'way/width': 'cannot-tell' }), 'way');
    expect(state).toMatchObject({ answer: 'cannot-tell', unknown: 1, problems: [] });
    expect(unanswered(report([unknown]))).toEqual([unknown]);
  });

  it('count as answered once the problem was left with a reason', () => {
    const left = finding({ leftReason: 'the table moves on Monday' });
    expect(stateOf(report([left], { 'way/width': 'problem' }), 'way')?.answer).toBe('fine');
    expect(openGroups(report([left]))).toEqual([]);
  });
});
