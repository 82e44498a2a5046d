import { z } from 'zod';
import type { Fix } from '../../findings/edit.ts';
import { doesNotApply, type RuleFinding, type RuleResult } from '../../findings/finding.ts';
import { freeFloorBefore, type Obstacle, obstaclesOf } from '../../measures/frontFloor.ts';
import type { OpenSide, Scene } from '../../scene/types.ts';
import type { Side } from '../../schema/types.ts';
import { meets } from '../../units/compare.ts';
import { mm } from '../../units/quantity.ts';
import { defineRule } from '../rule.ts';

export const turned = defineRule({
  id: 'survey/turned',
  asks: 'Does every shelf open to the room?',
  why: 'A shelf drawn with its open side to the wall is mostly one that was turned on the plan by mistake; where it really stands so, nobody gets at what is on it.',
  tier: 'settle',
  sources: ['class rule'],
  options: z.strictObject({
    /** mm of floor before the middle of an open side */
    least: z.number().min(0).max(5000).default(300),
  }),
  messages: {
    turned: '{shelf} opens {side} to {floor} of floor before a wall or another shelf. Was it turned on the plan?',
    walls: 'The walls do not hold, so where the shelves open to is not known.',
  },
  judge({ scene, options: { least } }): RuleResult {
    const sides = scene.openSides.filter((side) => !side.piece.closed);
    if (sides.length === 0) return doesNotApply;
    if (!scene.room.isSound) return { applies: true, findings: [unsound] };
    const shelves = obstaclesOf(scene).filter(({ id }) => scene.bodyById.get(id)?.kind === 'shelf');
    const floorBefore = (side: OpenSide): number => freeFloorBefore(scene, shelves, side, least + 1)(side.width / 2);
    const found = sides.flatMap((side) => {
      const floor = floorBefore(side);
      return meets(floor, least) ? [] : [{ side, floor }];
    });
    // A shelf that opens to both sides against a wall is one thing to mend.
    const first = found.filter(({ side }, i) => found.findIndex((other) => other.side.piece === side.piece) === i);
    return { applies: true, findings: first.map(({ side, floor }) => finding(scene, shelves, side, floor, least)) };
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

const sideWords: Readonly<Record<Side, string>> = {
  front: 'at the front',
  back: 'at the back',
  left: 'on the left',
  right: 'on the right',
};

function finding(scene: Scene, shelves: readonly Obstacle[], side: OpenSide, floor: number, least: number): RuleFinding {
  const fix = turnIt(scene, shelves, side, least);
  return {
    outcome: 'problem',
    severity: 'should',
    messageKey: 'turned',
    data: { shelf: side.body.label, side: sideWords[side.side], floor: mm(floor) },
    subjects: [side.piece.id],
    measured: mm(floor),
    needed: mm(least),
    at: side.body.center,
    ...(fix && { fix }),
  };
}

const opposite: Readonly<Record<Side, Side>> = { front: 'back', back: 'front', left: 'right', right: 'left' };

/** Half a turn on its spot, where every open side then has its floor. A shelf of an odd outline would cover other floor. */
function turnIt(scene: Scene, shelves: readonly Obstacle[], side: OpenSide, least: number): Fix | null {
  const { piece, body } = side;
  if (piece.locked || piece.outline) return null;
  const isOpenThen = piece.sides.every((open) => {
    const edge = body.edges[opposite[open]];
    const width = open === 'left' || open === 'right' ? piece.depth : piece.width;
    return meets(freeFloorBefore(scene, shelves, { ...side, side: open, edge, width }, least + 1)(width / 2), least);
  });
  if (!isOpenThen) return null;
  const rotation = (piece.rotation + 180) % 360;
  return { label: `Do it: turn ${body.label}`, edits: [{ do: 'move-piece', piece: piece.id, x: piece.x, y: piece.y, rotation }] };
}
