import { type WayBetweenAnswer, type WayStop, wayBetween } from '#model/measures/wayBetween.ts';
import { WaysField } from '#model/measures/waysField.ts';
import { buildScene } from '#model/scene/build.ts';
import type { Classroom } from '#model/schema/types.ts';
import { sayError } from './sayError.ts';

/** How wide the way is between two ends of the tape: one question, then the worker is done. */
export interface WayQuestion {
  readonly classroom: Classroom;
  readonly arrangement: string;
  readonly from: WayStop;
  readonly to: WayStop;
}

/** `isTaken`: an end that is a point lies where something stands, or chairs are drawn out. */
export type WayAnswer = { readonly way: WayBetweenAnswer; readonly isTaken: boolean } | { readonly failure: string };

/** Apart from the worker so that tests can run it. */
export function measureWay({ classroom, arrangement, from, to }: WayQuestion): WayAnswer {
  try {
    const scene = buildScene(classroom, arrangement);
    const way = wayBetween(scene, from, to, { body: null });
    const isTold = way.isTold || way.why !== 'walls';
    const isTaken = isTold && [from, to].some((stop) => typeof stop !== 'string' && !WaysField.of(scene).isFloor(stop));
    return { way, isTaken };
  } catch (error) {
    return { failure: sayError(error) };
  }
}
