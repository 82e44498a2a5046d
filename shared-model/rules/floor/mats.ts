import { z } from 'zod';
import { doesNotApply, type RuleFinding } from '../../findings/finding.ts';
import type { Mats } from '../../measures/mats.ts';
import { defineRule } from '../rule.ts';

export const mats = defineRule({
  id: 'floor/mats',
  asks: 'Can as many work mats lie on the floor as are wanted?',
  why: 'Much of the work is done on a mat on the floor. Where no mat can be laid, a child waits, gives up, or lays it where others walk.',
  tier: 'settle',
  sources: ['class rule'],
  options: z.strictObject({}),
  messages: {
    tooFew: 'At most {most} mats lie on the floor at once; {wanted} are wanted. {count} were found a place.',
    between: '{count} mats were found a place, and no more than {most} can have one; {wanted} are wanted.',
    walls: 'The walls do not hold, so nothing can be said of the floor.',
  },
  judge({ scene, measures }) {
    const children = scene.classroom.children.groups.reduce((sum, group) => sum + group.count, 0);
    const said = scene.classroom.floorWork.wanted;
    if (said === null && children === 0) return doesNotApply;
    const wanted = said ?? Math.max(0, children - measures.seats().total);
    if (wanted === 0) return { applies: true, findings: [] };
    const found = measures.mats();
    return { applies: true, findings: found ? tooFew(found, wanted) : [unsound] };
  },
});

const unsound: RuleFinding = {
  outcome: 'cannot-tell',
  severity: 'should',
  messageKey: 'walls',
  data: {},
  subjects: ['room'],
  missing: ['walls that close without crossing'],
};

function tooFew({ count, upperBound }: Mats, wanted: number): RuleFinding[] {
  if (count >= wanted) return [];
  const isSure = upperBound < wanted;
  return [
    {
      outcome: isSure ? 'problem' : 'cannot-tell',
      severity: 'should',
      messageKey: isSure ? 'tooFew' : 'between',
      data: { count, most: upperBound, wanted },
      subjects: ['room'],
      measured: { value: count, unit: 'mats' },
      needed: { value: wanted, unit: 'mats' },
      ...(!isSure && {
        missing: [
          `a place for ${wanted - count} more ${wanted - count === 1 ? 'mat' : 'mats'}: lay them out in the room and see whether the ways stay open`,
        ],
      }),
    },
  ];
}
