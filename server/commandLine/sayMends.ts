import { type Mend, mendWaysNow } from '#model/analysis/mendWays/mendWays.ts';
import { sayMend, sayMove } from '#model/analysis/mendWays/sayMend.ts';
import { buildScene } from '#model/scene/build.ts';
import type { Scene } from '#model/scene/types.ts';
import type { Classroom } from '#model/schema/types.ts';
import type { CheckArguments } from './arguments.ts';

type Answer =
  | { readonly ok: true; readonly isWide: boolean; readonly text: string; readonly json: unknown }
  | { readonly ok: false; readonly why: string };

/** What `--mend` prints, for people and as JSON (mm), and whether every way is wide enough or can be made so. */
export function sayMends(classroom: Classroom, arrangement: string | null, asked: NonNullable<CheckArguments['mend']>): Answer {
  const scene = buildScene(classroom, arrangement);
  const unknown = asked.keep.filter((id) => !scene.bodyById.get(id)?.piece);
  if (unknown.length > 0) return { ok: false, why: `no piece "${unknown.join('" or "')}" in arrangement ${scene.arrangement.id}.` };
  const mend = mendWaysNow(classroom, { arrangement, ...asked });
  return {
    ok: true,
    isWide: mend.end === 'found' || mend.end === 'fine',
    text: sayLines(scene, mend).join('\n'),
    json: plainMend(scene, mend),
  };
}

function sayLines(scene: Scene, mend: Mend): string[] {
  if (mend.end !== 'found') return [sayMend(scene, mend)];
  return [
    sayMend(scene, mend),
    ...mend.moves.map(
      (move) => `  ${sayMove(scene, move)} (${move.piece}: from ${move.from.x},${move.from.y} to ${move.to.x},${move.to.y} mm)`,
    ),
    'A plan that passes is no licence: your local authority decides.',
  ];
}

function plainMend(scene: Scene, mend: Mend): unknown {
  const message = sayMend(scene, mend);
  if (mend.end !== 'found') return { ...mend, message };
  const { end, place, total, looks, edits } = mend;
  const moves = mend.moves.map((move) => ({ ...move, says: sayMove(scene, move) }));
  return {
    end,
    message,
    ...(place && { place }),
    total,
    moves,
    edits,
    mends: mend.mends.map(({ key }) => key),
    brings: mend.brings.map(({ key }) => key),
    looks,
  };
}
