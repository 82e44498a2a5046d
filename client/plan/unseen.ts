import type { Report } from '#model/analysis/report.ts';
import type { Finding } from '#model/findings/finding.ts';
import { area, boundingBox, contains } from '#model/geometry/polygon.ts';
import type { Point } from '#model/geometry/vec.ts';
import type { Arrangement } from '#model/schema/types.ts';
import { type UnseenPatch, unseenIn } from './reportParts.ts';

/** mm²: while nothing is asked, slivers behind a leg or a corner are left out */
const SLIVER = 100_000;
/** Share of the floor: more than this hatched would hide the plan, so it waits until somebody asks */
const CROWDED = 0.3;

interface Shown {
  readonly finding: Finding | null;
  readonly isMoving: boolean;
  /** mm² inside the walls */
  readonly floor: number;
}

/** The unseen floor to draw: all of it while a finding of sight is looked at, else what does not crowd the sheet, and nothing while another thing is looked at. */
export function unseenToDraw(report: Report | null, { finding, isMoving, floor }: Shown): readonly UnseenPatch[] {
  // While something moves the slower checks still speak of where it stood.
  if (isMoving) return [];
  const patches = unseenIn(report);
  if (finding?.rule.startsWith('sight/')) return patches;
  if (finding) return [];
  const large = patches.filter((patch) => areaOf(patch) >= SLIVER);
  return large.reduce((sum, patch) => sum + areaOf(patch), 0) > floor * CROWDED ? [] : large;
}

const areaOf = ({ outline, holes }: UnseenPatch): number => area(outline) - holes.reduce((sum, hole) => sum + area(hole), 0);

/** "not seen from the chair": from where the class watches. */
export function sayUnseen({ watch, pieces }: Pick<Arrangement, 'watch' | 'pieces'>): string {
  if (watch && watch.length > 0) return `not seen from where you watch`;
  return pieces.filter(({ kind }) => kind === 'adult-seat').length > 1 ? 'not seen from the chairs' : 'not seen from the chair';
}

/** Steps of the raster on which words look for room in a patch */
const RASTER = 9;

/** Points inside a patch where its words may be centred, the middle first. mm */
export function middlesOf({ outline, holes }: UnseenPatch): Point[] {
  const box = boundingBox(outline);
  const middle = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
  const points: Point[] = [];
  for (let i = 1; i < RASTER; i++)
    for (let j = 1; j < RASTER; j++)
      points.push({
        x: box.minX + ((box.maxX - box.minX) * i) / RASTER,
        y: box.minY + ((box.maxY - box.minY) * j) / RASTER,
      });
  const far = (p: Point): number => Math.hypot(p.x - middle.x, p.y - middle.y);
  return [middle, ...points.sort((p, q) => far(p) - far(q))].filter(
    (p) => contains(outline, p) && !holes.some((hole) => contains(hole, p)),
  );
}
