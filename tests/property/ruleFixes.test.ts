import { describe, expect, it } from 'vitest';
import { judgeRule } from '#model/analysis/report.ts';
import { applyEdits } from '#model/findings/applyEdits.ts';
import { seededRandom } from '#model/geometry/seededRandom.ts';
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
import type { Classroom, ClassroomInput } from '#model/schema/types.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';

// Random rooms, our own: no source. What is held is what the house promises of every rule: it never throws, its texts and
// figures are whole, a cannot-tell says what is missing, and doing a fix takes its finding away.
type MaterialInput = NonNullable<ClassroomInput['materials']>[number];
type Placement = NonNullable<PlainRoomChange['placements']>[number];
const ROOMS = 100;

function randomRoom(seed: number): Classroom {
  const random = seededRandom(seed);
  const between = (from: number, to: number): number => Math.round(from + (to - from) * random());
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)] as T;
  const pieces = Array.from({ length: between(1, 7) }, (_, i) => ({
    id: `p${i}`,
    kind: pick(['shelf', 'shelf', 'shelf', 'table', 'seat'] as const),
    x: between(200, 5800),
    y: between(200, 4800),
    rotation: pick([0, 90, 180, 270, between(0, 359)]),
    width: between(300, 1800),
    depth: between(250, 700),
    height: pick([null, 500, 900, 1400]),
    anchored: pick([null, true, false]),
    sides: pick([['front'], ['front'], ['front', 'back'], ['left']] as const).slice(),
    levels: [850, 450, 60].slice(between(0, 2)).map((surface, n) => ({ id: `l${n}`, surface })),
    table: pick([null, 'p0']),
    locked: random() < 0.1,
  }));
  const count = between(0, 24);
  const materials = Array.from(
    { length: count },
    (_, i): MaterialInput => ({
      id: `m${i}`,
      name: `thing ${i}`,
      area: pick(['sensorial', 'sensorial', 'practical-life']),
      strand: pick(['a', 'b', 'c', '']),
      step: pick([null, null, between(1, 9)]),
      after: random() < 0.4 ? [pick([`m${between(0, count - 1)}`, 'se-tower', 'nobody'])] : [],
      state: pick(['out', 'out', 'out', 'store', 'mend']),
      width: pick([null, between(80, 500)]),
      depth: between(80, 350),
      height: pick([null, between(20, 250)]),
      mass: pick([null, between(1, 40) / 10]),
      carried: pick([null, 'whole', 'pieces', 'stays']),
      hands: pick([null, 1, 2]),
      fromMonths: pick([null, 30, 60]),
      smallest: pick([null, between(3, 80), [between(2, 40), between(2, 40), between(2, 70)]] as const) as MaterialInput['smallest'],
    }),
  );
  const placements = materials.flatMap(({ id }): Placement[] =>
    random() < 0.25
      ? []
      : [
          {
            material: id,
            piece: pick(pieces).id,
            side: pick(['front', 'front', 'front', 'back']),
            level: pick(['l0', 'l0', 'l1', 'l2']),
            x: between(0, 900),
          },
        ],
  );
  const survey = [6000, 5000, 6000, 5000].map((length, i) => ({
    from: `c${i + 1}`,
    length: length + between(-60, 60),
    turn: 90 + between(-1, 1) / 2,
  }));
  return plainRoom({
    access: { wheelchair: random() < 0.5 },
    children: { groups: [{ id: 'g1', fromMonths: pick([30, 36, 60]), toMonths: 72, count: 8 }] },
    materials,
    pieces,
    placements,
    room: {
      openings: [
        {
          id: 'd1',
          kind: 'door',
          from: pick(['c1', 'c2', 'c3']),
          offset: between(0, 3500),
          width: 900,
          swing: pick(['in-left', 'in-right', 'out-left']),
        },
      ],
      survey: { walls: survey },
    },
  });
}

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
