import { wayBetween } from '#model/measures/wayBetween.ts';
import { buildScene } from '#model/scene/build.ts';
import type { Classroom } from '#model/schema/types.ts';
import { roundMm } from '#model/units/round.ts';
import type { CheckArguments, WayEnd } from './arguments.ts';

/** What `--way` prints: mm, to 0.01. No `at` where there is no way; `walk` is null where the body cannot get there. */
interface SaidWay {
  readonly width: number;
  readonly at?: { readonly x: number; readonly y: number };
  readonly between: readonly { readonly id: string; readonly x: number; readonly y: number }[];
  readonly walk: number | null;
}
type Answer = { readonly ok: true; readonly way: SaidWay } | { readonly ok: false; readonly why: string };

/** The way between two ends of one arrangement, or why it cannot be told, in words. */
export function sayWay(classroom: Classroom, arrangement: string | null, way: NonNullable<CheckArguments['way']>): Answer {
  const scene = buildScene(classroom, arrangement);
  const answer = wayBetween(scene, way.from, way.to, { body: way.body });
  if (!answer.isTold) {
    if (answer.why === 'walls') return { ok: false, why: 'the walls cross or enclose nothing, so no way can be told.' };
    return { ok: false, why: `no door, piece or fixture "${sayEnd(way[answer.why])}" in arrangement ${scene.arrangement.id}.` };
  }
  return {
    ok: true,
    way: {
      width: roundMm(answer.width),
      ...(answer.at && { at: roundPoint(answer.at) }),
      between: answer.between.map((end) => ({ id: end.id, ...roundPoint(end) })),
      walk: answer.walk === null ? null : roundMm(answer.walk),
    },
  };
}

const sayEnd = (end: WayEnd): string => (typeof end === 'string' ? end : `${end.x},${end.y}`);
const roundPoint = ({ x, y }: { x: number; y: number }) => ({ x: roundMm(x), y: roundMm(y) });
