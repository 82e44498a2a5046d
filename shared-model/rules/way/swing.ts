import { z } from 'zod';
import type { Fix } from '../../findings/edit.ts';
import { doesNotApply, type RuleFinding, type RuleResult } from '../../findings/finding.ts';
import { convexParts } from '../../geometry/convexParts.ts';
import { forbiddenShifts, penetration, waysOut } from '../../geometry/penetration.ts';
import { type Box, boundingBox, boxesMeet, type Polygon } from '../../geometry/polygon.ts';
import { clearShift } from '../../measures/clearShift.ts';
import { boxOf, cachedParts, isStanding } from '../../measures/overlaps.ts';
import { keptWith } from '../../scene/kept.ts';
import type { Scene, SceneBody, SceneOpening } from '../../scene/types.ts';
import { mm } from '../../units/quantity.ts';
import { defineRule } from '../rule.ts';

/** mm: a push further than this is no simple fix */
const FARTHEST_PUSH = 1500;
/** After this many findings no more pushes are worked out. */
const MOST_FIXES = 20;

interface Leaf {
  readonly opening: SceneOpening;
  readonly floor: readonly Polygon[];
  readonly box: Box;
}
interface Blocked {
  readonly body: SceneBody;
  readonly leaf: Leaf;
  readonly depth: number;
}

export const swing = defineRule({
  id: 'way/swing',
  asks: 'Can every door open all the way?',
  why: 'A door that strikes a shelf opens halfway: nobody with a tray or a chair gets through, a child behind it is hit, and when all have to leave at once it jams.',
  tier: 'live',
  sources: ['class rule'],
  options: z.strictObject({
    /** mm a thing may reach into the swing and still count as touching it */
    touching: z.number().min(0).max(50).default(1),
  }),
  messages: {
    blocked:
      '{thing} stands in the swing of {door}, {depth} deep: the door does not open all the way. A class rule; your local authority decides.',
    walls: 'What the leaves of the doors sweep is not known: the walls cross each other or enclose nothing.',
  },
  judge({ scene, options: { touching } }): RuleResult {
    const leaves = leavesOf(scene);
    const standing = scene.bodies.filter(isStanding);
    if (leaves.length === 0 || standing.length === 0) return doesNotApply;
    if (!scene.room.isSound) {
      const missing = ['walls that close and do not cross'];
      const finding = { outcome: 'cannot-tell', severity: 'must', messageKey: 'walls', data: {}, subjects: ['room'], missing } as const;
      return { applies: true, findings: [finding] };
    }
    const partsOf = cachedParts();
    const blocked = standing.flatMap((body) =>
      leaves.flatMap((leaf): Blocked[] => {
        if (!boxesMeet(boxOf(body), leaf.box)) return [];
        const depth = penetration(partsOf(body), leaf.floor);
        return depth > touching ? [{ body, leaf, depth }] : [];
      }),
    );
    return { applies: true, findings: blocked.map((one, index) => finding(scene, one, leaves, index < MOST_FIXES)) };
  },
});

const leavesOf = ({ room }: Scene): Leaf[] =>
  room.openings.flatMap((opening) => (opening.swingFloor ? [{ opening, ...leafOf(opening.swingFloor) }] : []));

const leafOf = keptWith((floor: Polygon) => ({ floor: convexParts(floor), box: boundingBox(floor) }));

function finding(scene: Scene, { body, leaf, depth }: Blocked, leaves: readonly Leaf[], withFix: boolean): RuleFinding {
  const fix = withFix ? moveOut(scene, body, leaves) : null;
  return {
    outcome: 'problem',
    severity: 'must',
    messageKey: 'blocked',
    data: { thing: body.label, door: leaf.opening.label, depth: mm(depth) },
    subjects: [body.id, leaf.opening.id],
    measured: mm(depth),
    needed: mm(0),
    at: body.center,
    ...(fix && { fix }),
  };
}

/** The shortest way out of every leaf's swing to a place that is free. */
function moveOut(scene: Scene, body: SceneBody, leaves: readonly Leaf[]): Fix | null {
  const partsOf = cachedParts();
  const moving = [body, ...scene.bodies.filter((other) => other.piece?.table === body.id)].flatMap(partsOf);
  const swings = leaves.flatMap(({ floor }) => floor);
  const shift = clearShift(scene, body, waysOut(forbiddenShifts(moving, swings)), FARTHEST_PUSH);
  if (!shift) return null;
  return {
    label: `Do it: move ${body.label} out of the door's swing`,
    edits: shift.to.map(({ piece, x, y }) => ({ do: 'move-piece', piece, x, y })),
  };
}
