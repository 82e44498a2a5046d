import { describe, expect, it } from 'vitest';
import { sayAnswer } from '#client/checks/sayAnswer.ts';
import { sayNothingOpen } from '#client/places/sayNothingOpen.ts';

const answers = ['problem', 'cannot-tell', 'fine', 'does-not-apply', 'no-rule'] as const;

describe('where nothing is open', () => {
  it.each(answers)('nothing is said to be in order while checks are still looking: %s', (answer) => {
    expect(sayNothingOpen(answer, 0, true)).toBe('Still being worked out …');
    expect(sayAnswer(answer, true)).toBe(answer === 'cannot-tell' ? 'Not known yet: see "Measure these next".' : 'Still looking …');
  });

  it('the room takes the children only when nothing was left either', () => {
    expect(sayNothingOpen('fine', 0, false)).toBe('Nothing is open: the room takes the children enrolled.');
    expect(sayNothingOpen('fine', 1, false)).toBe('Nothing else is open; 1 is left as it is: see Checks at the room.');
    expect(sayNothingOpen('does-not-apply', 0, false)).toContain('No children');
    expect(sayNothingOpen('no-rule', 0, false)).toContain('Not checked');
    expect(sayAnswer('fine', false)).toBe('Yes, as far as the checks can tell.');
  });
});
