import { z } from 'zod';
import type { Fix } from '../../findings/edit.ts';
import { doesNotApply, type RuleFinding, type RuleResult } from '../../findings/finding.ts';
import { sayThings } from '../../findings/sayBoard.ts';
import { add, cross, lerp, type Point, scale, sub } from '../../geometry/vec.ts';
import { isBacked } from '../../measures/backing.ts';
import { type ClearShift, clearShift } from '../../measures/clearShift.ts';
import { pieceBody } from '../../scene/bodies.ts';
import type { Scene, SceneBody } from '../../scene/types.ts';
import { meets } from '../../units/compare.ts';
import { mm } from '../../units/quantity.ts';
import { defineRule } from '../rule.ts';

/** mm: a wall further behind than this is no near one */
const FARTHEST = 1000;

const classRule = 'A class rule: no published threshold for open shelves was found. Your local authority decides.';

export const tip = defineRule({
  id: 'steady/tip',
  asks: 'Does every shelf stand so that it cannot tip over?',
  why: 'Children pull themselves up, lean and climb. A tall, shallow shelf that nothing holds comes down on them.',
  tier: 'settle',
  sources: ['class rule', 'D02'],
  options: z.strictObject({
    /** height over depth from which a shelf has to be held */
    ratio: z.number().positive().max(100).default(2),
    /** mm to a wall or to a shelf behind it that holds it */
    near: z.number().min(0).max(1000).default(50),
  }),
  messages: {
    loose: `{what}: not fixed, taller than {ratio} times the depth, and neither wall nor shelf stands behind. {worst} is {height} high and {depth} deep. Fix {them} to wall or floor. ${classRule}`,
    unknown: `{what}: free in the room, and whether {they} could tip over is not known. ${classRule}`,
  },
  judge({ scene, options: { ratio, near } }): RuleResult {
    const shelves = scene.bodies.filter((body) => body.kind === 'shelf' && body.piece);
    if (shelves.length === 0) return doesNotApply;
    const isSlim = ({ height, depth }: SceneBody): boolean => height === null || !meets(ratio * depth, height);
    const free = shelves.filter((body) => body.piece?.anchored !== true && isSlim(body) && !isBacked(scene, body, near));
    const loose = free.filter((body) => body.piece?.anchored === false && body.height !== null);
    const open = free.filter((body) => !loose.includes(body));
    return { applies: true, findings: [...looseFinding(scene, loose, ratio, near), ...openFinding(open)] };
  },
});

const slimness = ({ height, depth }: SceneBody): number => (height ?? 0) / depth;

function looseFinding(scene: Scene, loose: readonly SceneBody[], ratio: number, near: number): RuleFinding[] {
  const worst = [...loose].sort((p, q) => slimness(q) - slimness(p))[0];
  if (worst?.height == null) return [];
  const fix = againstWalls(scene, loose, near);
  return [
    {
      outcome: 'problem',
      severity: 'should',
      messageKey: 'loose',
      data: {
        what: sayThings(loose.map(({ label }) => label)),
        ratio,
        worst: worst.label,
        height: mm(worst.height),
        depth: mm(worst.depth),
        them: loose.length === 1 ? 'it' : 'them',
      },
      subjects: loose.map(({ id }) => id),
      measured: mm(worst.height),
      needed: mm(ratio * worst.depth),
      at: worst.center,
      ...(fix && { fix }),
    },
  ];
}

/**
 * Every loose shelf straight back to the wall behind it, where all of them have one near enough and free floor to it.
 * Fixing a shelf to wall or floor is work that only a person can say is done.
 */
function againstWalls(scene: Scene, loose: readonly SceneBody[], near: number): Fix | null {
  const shifts = loose.map((body) => backToWall(scene, body, near));
  const found = shifts.filter((shift) => shift !== null);
  if (found.length < shifts.length) return null;
  return {
    label: `Do it: move ${sayThings(loose.map(({ label }) => label))} back against the wall`,
    edits: found.flatMap(({ to }) => to.map(({ piece, x, y }) => ({ do: 'move-piece' as const, piece, x, y }))),
  };
}

function backToWall(scene: Scene, body: SceneBody, near: number): ClearShift | null {
  const { a, b, outward } = body.edges.back;
  const free = Math.min(...[a, lerp(a, b, 0.5), b].map((p) => distanceToWall(scene, p, outward)));
  // A little short of it, so that whole mm never end in the wall.
  const by = Math.floor(free);
  const shift = by < 1 ? null : clearShift(scene, body, [scale(outward, by)], FARTHEST);
  const [to] = shift?.to ?? [];
  if (!shift || !to || !body.piece) return null;
  const moved = pieceBody({ ...body.piece, x: to.x, y: to.y });
  return isBacked({ ...scene, bodies: scene.bodies.filter((other) => other !== body) }, moved, near) ? shift : null;
}

/** mm from a point straight on to the first wall; Infinity: none. */
function distanceToWall(scene: Scene, from: Point, direction: Point): number {
  const to = add(from, scale(direction, FARTHEST));
  const crossed = scene.room.walls.flatMap(({ a, b }) => {
    const det = cross(sub(to, from), sub(b, a));
    if (Math.abs(det) < 1e-9) return [];
    const along = cross(sub(a, from), sub(b, a)) / det;
    const across = cross(sub(a, from), sub(to, from)) / det;
    return along >= -1e-9 && across >= 0 && across <= 1 ? [along * FARTHEST] : [];
  });
  return Math.min(Infinity, ...crossed);
}

function openFinding(open: readonly SceneBody[]): RuleFinding[] {
  if (open.length === 0) return [];
  const [first] = open;
  return [
    {
      outcome: 'cannot-tell',
      severity: 'should',
      messageKey: 'unknown',
      data: { what: sayThings(open.map(({ label }) => label)), they: open.length === 1 ? 'it' : 'they' },
      subjects: open.map(({ id }) => id),
      part: 'unknown',
      ...(first && { at: first.center }),
      missing: open.flatMap(({ label, height, piece }) => [
        ...(piece?.anchored === null ? [`say whether ${label} is fixed to wall or floor`] : []),
        ...(height === null ? [`give ${label} its height`] : []),
      ]),
    },
  ];
}
