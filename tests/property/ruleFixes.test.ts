import { describe, expect, it } from 'vitest';
import { judgeRule } from '#model/analysis/report.ts';
import { applyEdits } from '#model/findings/applyEdits.ts';
import { measuresOf } from '#model/measures/measures.ts';
import { gap } from '#model/rules/order/gap.ts';
import { strand } from '#model/rules/order/strand.ts';
import { advisory } from '#model/rules/reach/advisory.ts';
import { carry } from '#model/rules/reach/carry.ts';
import { twoHands } from '#model/rules/reach/two-hands.ts';
import type { Rule } from '#model/rules/rule.ts';
import { small } from '#model/rules/steady/small.ts';
import { tip } from '#model/rules/steady/tip.ts';
import { closure } from '#model/rules/survey/closure.ts';
import { turned } from '#model/rules/survey/turned.ts';
import { swing } from '#model/rules/way/swing.ts';
import { buildScene } from '#model/scene/build.ts';
import type { Classroom } from '#model/schema/types.ts';
import { randomRoom } from '#tests/support/randomRoom.ts';

// Random rooms, our own: no source. What is held is what the house promises of every rule: it never throws, its texts and
// figures are whole, a cannot-tell says what is missing, and doing a fix takes its finding away.
const ROOMS = 100;

const withFix = new Set([swing, turned, closure, twoHands, gap, strand].map((rule) => rule.id));

const judged = (rule: Rule, classroom: Classroom) => {
  const scene = buildScene(classroom);
  return judgeRule(rule, scene, measuresOf(scene));
};

describe.each([swing, turned, closure, tip, small, twoHands, carry, advisory, gap, strand].map((rule) => [rule.id, rule] as const))(
  '%s in random rooms',
  (id, rule) => {
    it('keeps what every rule promises', () => {
      const answers = new Set<string>();
      let fixes = 0;
      for (let seed = 1; seed <= ROOMS; seed++) {
        const classroom = randomRoom(seed);
        const { answer, findings } = judged(rule, classroom);
        answers.add(answer);
        for (const finding of findings) {
          const where = `seed ${seed}, ${finding.key}`;
          expect(finding.message, where).not.toMatch(/undefined|NaN|Infinity|\{\w+\}/);
          expect(Number.isFinite(finding.measured?.value ?? 0), where).toBe(true);
          if (finding.outcome === 'cannot-tell') expect(finding.missing, where).not.toEqual([]);
          if (!finding.fix) continue;
          fixes++;
          const mended = judged(rule, applyEdits(classroom, 'a1', finding.fix.edits));
          expect(
            mended.findings.map(({ key }) => key),
            `${where}: the fix leaves its finding`,
          ).not.toContain(finding.key);
        }
      }
      // The rooms are varied enough to trip every rule.
      expect(answers, id).toContain('problem');
      if (withFix.has(id)) expect(fixes, id).toBeGreaterThan(0);
    });
  },
);
