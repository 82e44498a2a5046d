import type { Scene } from '#model/scene/types.ts';
import { areApart, type LaidMat, placeChecker } from './matChecker.ts';

/**
 * A place of a mat on a raster laid square to one turn. Found by the checker of layings; shares nothing with the packing.
 */
interface Place extends LaidMat {
  /** Lower corner and size of the mat grown by half the gap, in the raster's own axes. */
  readonly u: number;
  readonly v: number;
  readonly along: number;
  readonly across: number;
}

/** mm by which grown mats may share floor: the checker's own. */
const LAP = 0.005;
/** mm */
const STEP = 150;

/** Places on the raster, and against the walls; where there are more than `most`, an even share of them. */
export function rasterPlaces(scene: Scene, turn: number, most: number): Place[] {
  const { mat, gap } = scene.classroom.floorWork;
  const t = (turn * Math.PI) / 180;
  const own = ({ x, y }: { x: number; y: number }) => ({ u: x * Math.cos(t) + y * Math.sin(t), v: y * Math.cos(t) - x * Math.sin(t) });
  const walls = scene.room.outline.map(own);
  const wrongAt = placeChecker(scene);
  const places: Place[] = [];
  for (const isAcross of [false, true]) {
    const [w, d] = isAcross ? [mat.depth, mat.width] : [mat.width, mat.depth];
    const line = (axis: 'u' | 'v', size: number): number[] => {
      const ends = walls.map((p) => p[axis]);
      const [low, high] = [Math.min(...ends) + size / 2, Math.max(...ends) - size / 2];
      const raster = Array.from({ length: Math.max(0, Math.floor((high - low) / STEP) + 1) }, (_, k) => low + k * STEP);
      // Against the wall at the far end, and as many whole mats nearer.
      const fromEnd = Array.from({ length: 4 }, (_, k) => high - k * (size + gap));
      return [...raster, ...fromEnd].filter((at) => at >= low - 1e-9);
    };
    for (const u of line('u', w))
      for (const v of line('v', d)) {
        const at = { x: u * Math.cos(t) - v * Math.sin(t), y: u * Math.sin(t) + v * Math.cos(t) };
        const place = { ...at, width: mat.width, depth: mat.depth, rotation: turn + (isAcross ? 90 : 0) };
        if (wrongAt(place).length > 0) continue;
        places.push({ ...place, u: u - (w + gap) / 2, v: v - (d + gap) / 2, along: w + gap, across: d + gap });
      }
  }
  const share = Math.max(1, places.length / most);
  return places.filter((_, k) => Math.floor(k / share) !== Math.floor((k - 1) / share));
}

/**
 * Places that all cover one point, grown: no two of them go together. Two boxes square to the same axes share floor just
 * when the corner made of the later start along and the later start across lies in both, so those corners are enough.
 */
export function coveringSets(places: readonly Place[]): number[][] {
  const us = [...new Set(places.map((p) => p.u))];
  const vs = [...new Set(places.map((p) => p.v))];
  const found = new Map<string, number[]>();
  for (const u of us) {
    const open = places.flatMap((p, k) => (p.u <= u && p.u + p.along > u + LAP ? [k] : []));
    for (const v of vs) {
      const set = open.filter((k) => {
        const p = places[k] as Place;
        return p.v <= v && p.v + p.across > v + LAP;
      });
      if (set.length > 1) found.set(set.join(' '), set);
    }
  }
  return [...found.values()];
}

/** Pairs among those chosen that lie too close. */
export const tooClose = (places: readonly LaidMat[], gap: number): string[] =>
  places.flatMap((p, i) => places.slice(0, i).flatMap((q, j) => (areApart(p, q, gap) ? [] : [`mats ${j} and ${i}`])));
