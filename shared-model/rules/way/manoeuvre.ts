import { z } from 'zod';
import { doesNotApply, type RuleFinding, type RuleResult } from '../../findings/finding.ts';
import { accessFigures } from '../../measures/accessFigures.ts';
import { type DoorFloor, hingedDoors, measureDoorFloors } from '../../measures/manoeuvring.ts';
import { sayObstacle, sayOpening } from '../../measures/wayWords.ts';
import { alongOpening } from '../../scene/room.ts';
import type { Scene } from '../../scene/types.ts';
import { mm } from '../../units/quantity.ts';
import { defineRule } from '../rule.ts';

export const manoeuvre = defineRule({
  id: 'way/manoeuvre',
  asks: 'Is there floor to open every door from a wheelchair?',
  why: 'To pull a door open one has to sit beside its leaf; with a shelf there, somebody else must always come and open it.',
  tier: 'settle',
  sources: ['A10'],
  options: z.strictObject({}),
  messages: {
    blocked:
      'Before {door} ({side} side) {thing} stands on the floor that a wheelchair needs to open it: {width} along the wall and {needed} out to come straight on, and no other approach is free either. Your local authority decides.',
    walls: 'Whether doors can be opened from a wheelchair is not known: the walls cross each other or enclose nothing.',
  },
  judge({ scene }): RuleResult {
    if (!accessFigures(scene).isRequired || hingedDoors(scene).length === 0) return doesNotApply;
    const floors = measureDoorFloors(scene);
    if (!floors) {
      const missing = ['walls that close and do not cross'];
      const finding = { outcome: 'cannot-tell', severity: 'should', messageKey: 'walls', data: {}, subjects: ['room'], missing } as const;
      return { applies: true, findings: [finding] };
    }
    return { applies: true, findings: floors.flatMap((floor) => problem(scene, floor)) };
  },
});

function problem(scene: Scene, { opening, side, spaces }: DoorFloor): RuleFinding[] {
  const [front] = spaces;
  if (!front || spaces.some(({ taken }) => taken.length === 0)) return [];
  const [first] = front.taken;
  const things = front.taken.filter((id) => scene.bodyById.has(id));
  return [
    {
      outcome: 'problem',
      severity: 'should',
      messageKey: 'blocked',
      data: {
        door: sayOpening(scene, opening.id),
        side,
        thing: first === undefined ? 'something' : sayObstacle(scene, first),
        width: mm(front.width),
        needed: mm(front.space.depth),
      },
      subjects: [opening.id, ...things],
      measured: mm(front.clearDepth),
      needed: mm(front.space.depth),
      at: alongOpening(opening, 0.5),
    },
  ];
}
