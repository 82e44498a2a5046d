import { z } from 'zod';
import { doesNotApply, type RuleFinding, type RuleResult } from '../../findings/finding.ts';
import { sayThings } from '../../findings/sayBoard.ts';
import { countOf } from '../../measures/roomNeeds.ts';
import { type SizedGroup, shareSeats, sizedGroups, sizedSeats } from '../../measures/seatSizes.ts';
import { furnitureSizes } from '../../standards/furnitureSizes.ts';
import { mm } from '../../units/quantity.ts';
import { defineRule } from '../rule.ts';

const options = z.strictObject({
  /** size marks that a seat may be off */
  tolerance: z.number().int().min(0).max(7).default(1),
});

interface Wish extends SizedGroup {
  readonly mark: number;
  readonly needed: number;
}

export const seat = defineRule({
  id: 'reach/seat',
  asks: 'Does every group find seats of its size?',
  why: 'On a seat that is too high the feet hang, at a table that is too low the back bends; a child who sits badly does not stay with its work.',
  tier: 'settle',
  sources: ['D01', 'CDC2000', 'class rule'],
  options,
  messages: {
    tooFew:
      '{group} ({count} children, about {stature} tall, size mark {mark}) finds {found} seats of its size; {needed} are needed beside the mats. A table of that size is {table} high, a seat {seat}.',
    notKnown: '{group} finds {found} seats of its size and needs {needed}; of {what} the height is not known.',
    noMats: 'How many seats each group needs is not known: the walls do not hold, so no mats can be counted.',
    tooYoung: 'Of {group} the size is not known: no table covers children that young.',
  },
  judge({ scene, measures, options: { tolerance } }): RuleResult {
    const groups = sizedGroups(scene);
    const children = countOf(groups);
    if (children === 0) return doesNotApply;
    const mats = measures.workPlaces().mats;
    if (!mats) return { applies: true, findings: [noMats] };
    // Mats are shared out by heads.
    const needed = ({ count }: SizedGroup): number => Math.max(0, Math.ceil(count - (mats.count * count) / children - 1e-9));
    const wishes = groups.flatMap((group): Wish[] => (group.mark === null ? [] : [{ ...group, mark: group.mark, needed: needed(group) }]));
    const seats = sizedSeats(measures.seats());
    const known = seats.flatMap(({ mark, seats: count }) => (mark === null ? [] : [{ mark, seats: count }]));
    const open = seats.filter(({ mark }) => mark === null);
    const got = shareSeats(wishes, known, tolerance);
    const short = wishes.reduce((sum, wish, i) => sum + wish.needed - (got[i] ?? 0), 0);
    // Seats of unknown size might all suit; if not even that is enough, some group is short in any case.
    const mayDo = short > 0 && open.reduce((sum, { seats: count }) => sum + count, 0) >= short;
    const labels = open.map(({ label }) => label);
    const findings = wishes.flatMap((wish, i): RuleFinding[] => {
      const found = got[i] ?? 0;
      return found >= wish.needed ? [] : [mayDo ? notKnown(wish, found, labels) : tooFew(wish, found)];
    });
    return { applies: true, findings: [...findings, ...groups.filter(({ mark }) => mark === null).map(tooYoung)] };
  },
});

const noMats: RuleFinding = {
  outcome: 'cannot-tell',
  severity: 'should',
  messageKey: 'noMats',
  data: {},
  subjects: ['room'],
  missing: ['mend the walls: they cross or do not close'],
};

function tooFew({ id, name, count, stature, mark, needed }: Wish, found: number): RuleFinding {
  const size = furnitureSizes.find((row) => row.mark === mark);
  return {
    outcome: 'problem',
    severity: 'should',
    messageKey: 'tooFew',
    data: { group: name, count, stature: mm(stature), mark, found, needed, table: mm(size?.table ?? 0), seat: mm(size?.seat ?? 0) },
    subjects: [id],
    measured: { value: found, unit: 'places' },
    needed: { value: needed, unit: 'places' },
  };
}

function notKnown({ id, name, needed }: Wish, found: number, labels: readonly string[]): RuleFinding {
  return {
    outcome: 'cannot-tell',
    severity: 'should',
    messageKey: 'notKnown',
    data: { group: name, found, needed, what: sayThings(labels) },
    subjects: [id],
    measured: { value: found, unit: 'places' },
    needed: { value: needed, unit: 'places' },
    missing: labels.map((label) => `give ${label} its height`),
  };
}

const tooYoung = ({ id, name }: SizedGroup): RuleFinding => ({
  outcome: 'cannot-tell',
  severity: 'should',
  messageKey: 'tooYoung',
  data: { group: name },
  subjects: [id],
  part: 'size',
  missing: [`measure the knee height of ${name} and choose their seats by it`],
});
