import { z } from 'zod';
import type { Fix } from '../../findings/edit.ts';
import { doesNotApply, type RuleFinding } from '../../findings/finding.ts';
import { forbiddenShifts, waysOut } from '../../geometry/penetration.ts';
import { boundingBox } from '../../geometry/polygon.ts';
import type { Point } from '../../geometry/vec.ts';
import { clearShift } from '../../measures/clearShift.ts';
import { cachedParts, isStanding, type Overlap } from '../../measures/overlaps.ts';
import type { Scene, SceneBody } from '../../scene/types.ts';
import { mm } from '../../units/quantity.ts';
import { defineRule } from '../rule.ts';

/** mm: a push further than this is no simple fix */
const FARTHEST_PUSH = 1500;
/** After this many findings the room is being built up, not mended: no more pushes are worked out. */
const MOST_FIXES = 40;

export const overlap = defineRule({
  id: 'steady/overlap',
  asks: 'Does anything stand where something else stands?',
  why: 'Two things cannot stand in one place. Until the drawing is right, every walkway and reach measured from it is wrong; once the furniture is squeezed in, it wedges and tips.',
  tier: 'live',
  sources: ['class rule'],
  options: z.strictObject({
    /** mm two things may share and still count as touching */
    touching: z.number().min(0).max(50).default(1),
  }),
  messages: {
    overlap: '{one} and {other} stand in the same place: they share {depth}.',
  },
  judge({ scene, measures, options }) {
    const standing = scene.bodies.filter(isStanding);
    if (standing.length < 2 || !standing.some((body) => body.piece)) return doesNotApply;
    const overlaps = measures.overlaps().filter(({ depth }) => depth > options.touching);
    return { applies: true, findings: overlaps.map((pair, index) => finding(scene, pair, index < MOST_FIXES)) };
  },
});

function finding(scene: Scene, { a, b, depth }: Overlap, withFix: boolean): RuleFinding {
  const fix = withFix ? pushApart(scene, a, b) : null;
  return {
    outcome: 'problem',
    severity: 'must',
    messageKey: 'overlap',
    data: { one: a.label, other: b.label, depth: mm(depth) },
    subjects: [a.id, b.id],
    measured: mm(depth),
    needed: mm(0),
    at: middleOfBoth(a, b),
    ...(fix && { fix }),
  };
}

/** The shorter of pushing one out of the other, where it then stands clear of everything. */
function pushApart(scene: Scene, a: SceneBody, b: SceneBody): Fix | null {
  const partsOf = cachedParts();
  const push = (moving: SceneBody, from: SceneBody) => {
    const shift = clearShift(scene, moving, waysOut(forbiddenShifts(partsOf(moving), partsOf(from))), FARTHEST_PUSH);
    return shift && { moving, from, ...shift };
  };
  // With equal pushes the smaller thing moves.
  const [first, second] = a.width * a.depth < b.width * b.depth ? [push(a, b), push(b, a)] : [push(b, a), push(a, b)];
  const best = first && second ? (second.by < first.by - 1 ? second : first) : (first ?? second);
  if (!best) return null;
  return {
    label: `Do it: move ${best.moving.label} out of ${best.from.label}`,
    edits: best.to.map(({ piece, x, y }) => ({ do: 'move-piece', piece, x, y })),
  };
}

function middleOfBoth(a: SceneBody, b: SceneBody): Point {
  const p = boundingBox(a.footprint);
  const q = boundingBox(b.footprint);
  return {
    x: (Math.max(p.minX, q.minX) + Math.min(p.maxX, q.maxX)) / 2,
    y: (Math.max(p.minY, q.minY) + Math.min(p.maxY, q.maxY)) / 2,
  };
}
