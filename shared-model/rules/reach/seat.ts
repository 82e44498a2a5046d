import { z } from 'zod';
import { doesNotApply, type RuleFinding, type RuleResult } from '../../findings/finding.ts';
import { sayThings } from '../../findings/sayBoard.ts';
import { countOf } from '../../measures/roomNeeds.ts';
import { type SizedGroup, shareMats, shareSeats, sizedGroups, sizedSeats } from '../../measures/seatSizes.ts';
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
  readonly found: number;
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
      '{group}: {count}, about {stature} tall, size mark {mark}; {found} of their size, {needed} needed beside the mats. A table of that size is {table} high, a seat {seat}.',
    notKnown: '{group}: {found} of their size, {needed} needed beside the mats found; {why}.',
    noMats: 'How many seats each group needs is not known: the walls do not hold, so no mats can be counted.',
    tooYoung: 'Of {group} the size is not known: no table covers children that young.',
  },
  judge({ scene, measures, options: { tolerance } }): RuleResult {
    const groups = sizedGroups(scene);
    const children = countOf(groups);
    if (children === 0) return doesNotApply;
    const mats = measures.workPlaces().mats;
    if (!mats) return { applies: true, findings: [noMats] };
    const seats = sizedSeats(measures.seats());
    const known = seats.flatMap(({ mark, seats: count }) => (mark === null ? [] : [{ mark, seats: count }]));
    const open = seats.filter(({ mark }) => mark === null);
    const short = shortWith(groups, known, mats.count, tolerance);
    const shortAtBest = shortWith(groups, known, mats.upperBound, tolerance);
    const openSeats = open.reduce((sum, { seats: count }) => sum + count, 0);
    // Seats of unknown size might all suit; if not even that is enough, some group is short in any case.
    const isSure = openSeats < shortAtBest.reduce((sum, { needed, found }) => sum + needed - found, 0);
    const labels = open.map(({ label }) => label);
    const findings = isSure ? shortAtBest.map(tooFew) : short.map((wish) => notKnown(wish, labels));
    return { applies: true, findings: [...findings, ...groups.filter(({ mark }) => mark === null).map(tooYoung)] };
  },
});

/** Groups that find fewer seats of their size than they need beside so many mats. */
function shortWith(
  groups: readonly SizedGroup[],
  seats: readonly { readonly mark: number; readonly seats: number }[],
  mats: number,
  tolerance: number,
): Wish[] {
  const shares = shareMats(
    groups.map(({ count }) => count),
    mats,
  );
  const wishes = groups.flatMap((group, i) =>
    group.mark === null ? [] : [{ ...group, mark: group.mark, needed: group.count - (shares[i] ?? 0) }],
  );
  const got = shareSeats(wishes, seats, tolerance);
  return wishes.map((wish, i) => ({ ...wish, found: got[i] ?? 0 })).filter(({ needed, found }) => found < needed);
}

const noMats: RuleFinding = {
  outcome: 'cannot-tell',
  severity: 'should',
  messageKey: 'noMats',
  data: {},
  subjects: ['room'],
  missing: ['mend the walls: they cross or do not close'],
};

const saySeats = (count: number): string => (count === 0 ? 'no seat' : count === 1 ? '1 seat' : `${count} seats`);

function tooFew({ id, name, count, stature, mark, needed, found }: Wish): RuleFinding {
  const size = furnitureSizes.find((row) => row.mark === mark);
  return {
    outcome: 'problem',
    severity: 'should',
    messageKey: 'tooFew',
    data: {
      group: name,
      count: count === 1 ? '1 child' : `${count} children`,
      stature: mm(stature),
      mark,
      found: saySeats(found),
      needed,
      table: mm(size?.table ?? 0),
      seat: mm(size?.seat ?? 0),
    },
    subjects: [id],
    measured: { value: found, unit: 'places' },
    needed: { value: needed, unit: 'places' },
  };
}

/** More mats, or the seats whose size is not known, may do. */
function notKnown({ id, name, needed, found }: Wish, labels: readonly string[]): RuleFinding {
  return {
    outcome: 'cannot-tell',
    severity: 'should',
    messageKey: 'notKnown',
    data: {
      group: name,
      found: saySeats(found),
      needed,
      why: labels.length > 0 ? `of ${sayThings(labels)} the height is not known` : 'perhaps more mats can be laid',
    },
    subjects: [id],
    measured: { value: found, unit: 'places' },
    needed: { value: needed, unit: 'places' },
    missing:
      labels.length > 0
        ? labels.map((label) => `give ${label} its height`)
        : [
            `${needed - found === 1 ? 'a place for 1 more child' : `places for ${needed - found} more children`} of the group “${name}”: lay the mats out in the room and see whether the ways stay open, or set out seats of their size`,
          ],
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
