import { useEffect, useState } from 'react';
import type { Scene } from '#model/scene/types.ts';
import { fitOptions } from '../../front/fitOptions.ts';
import { type FitInWords, fitInWords } from './fitInWords.ts';
import { whereaboutsOf } from './whereabouts.ts';

/** Where each thing on the table fits; missing: not looked up yet. */
export type Fits = ReadonlyMap<string, FitInWords>;

const SLICE_MS = 10;
const none: Fits = new Map();

/** Looks places up in slices between frames, so that typing and dragging stay quick with hundreds on the table. */
export function useFits(scene: Scene): Fits {
  const [fits, setFits] = useState(none);
  useEffect(() => {
    const where = whereaboutsOf(scene);
    const waiting = scene.classroom.materials.filter(({ id, width }) => width !== null && where.get(id)?.at === 'table');
    const found = new Map<string, FitInWords>();
    let timer = 0;
    const work = () => {
      const until = performance.now() + SLICE_MS;
      while (performance.now() < until) {
        const next = waiting.shift();
        if (!next) {
          setFits(found);
          return;
        }
        found.set(next.id, fitInWords(scene, fitOptions(scene, next.id)));
      }
      timer = window.setTimeout(work, 0);
    };
    timer = window.setTimeout(work, 30);
    return () => window.clearTimeout(timer);
  }, [scene]);
  return fits;
}
