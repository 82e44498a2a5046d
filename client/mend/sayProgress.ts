import type { MendOnly, MendProgress } from '#model/analysis/mendWays/mendWays.ts';
import { sayNarrowest } from '#model/analysis/mendWays/sayNarrowest.ts';
import type { Scene } from '#model/scene/types.ts';
import { sayLength } from '#model/units/sayLength.ts';
import { cellAt, neatlineBounds } from '../plan/neatline.ts';

type Progress = MendProgress | null;

/** mm: less than this is no bound worth a word. */
const LEAST_TOLD = 10;

/** "the narrowest place, between shelf 4 and table 2, at C5"; "every way" where all are asked for. */
export function sayWhat(scene: Scene, only: MendOnly | null, progress: Progress): string {
  if (only === null) return 'every way';
  if (only === 'must')
    return `every way to the ${sayLength(scene.classroom.access.leastWidth, scene.classroom.display.units)} that it must have`;
  const place = progress?.place;
  if (!place) return 'the narrowest place';
  return `the narrowest place, ${sayNarrowest(scene, place)}, at ${cellAt(place.at, neatlineBounds(scene.classroom.room.corners))}`;
}

/** How far it is; "": nothing can be said yet. */
export function sayHowFar(scene: Scene, progress: Progress): string {
  if (!progress || progress.looks === 0) return '';
  return [`The ways were measured ${progress.looks === 1 ? 'once' : `${progress.looks} times`}.`, ...bound(scene, progress)].join(' ');
}

/** What is known when it is stopped before anything was found. */
export function sayStopped(scene: Scene, only: MendOnly | null, progress: Progress): string {
  const far = sayHowFar(scene, progress);
  return ['Stopped. Nothing was changed.', ...(far === '' ? [] : [`Looked at was ${sayWhat(scene, only, progress)}.`, far])].join(' ');
}

function bound(scene: Scene, { total, best }: MendProgress): string[] {
  const { units } = scene.classroom.display;
  if (best) return [`Found: a change of ${sayLength(Math.round(best.total), units)} in all; a smaller one is being looked for.`];
  if (total < LEAST_TOLD) return [];
  return [`Among those tried no change of less than ${sayLength(Math.floor(total / 10) * 10, units)} in all does it.`];
}
