import type { Report } from '#model/analysis/report.ts';
import { boundingBox, boxesMeet, contains, edges, type Polygon, segmentsMeet } from '#model/geometry/polygon.ts';
import type { Piece } from '#model/schema/types.ts';
import { bodyOfPiece } from './bodies.ts';
import { cornersOf } from './box.ts';
import { type MatPlace, matsIn } from './reportParts.ts';

/** mm that a mat may lie under a thing's edge: it was laid right beside it */
const TOUCHING = 10;

let before: { readonly report: Report | null; readonly pieces: readonly Piece[]; readonly mats: readonly MatPlace[] } | null = null;

/** The mats of the report that nothing has been put on since: until the checks have looked again, an old one does not claim its floor. */
export function matsLying(report: Report | null, pieces: readonly Piece[]): readonly MatPlace[] {
  if (before?.report === report && before.pieces === pieces) return before.mats;
  const all = matsIn(report);
  const standing = pieces.filter(({ kind }) => kind !== 'rug').map((piece) => bodyOfPiece(piece).footprint);
  const mats = all.filter((mat) => {
    const ring = cornersOf({ ...mat, width: mat.width - 2 * TOUCHING, depth: mat.depth - 2 * TOUCHING });
    return !standing.some((footprint) => doMeet(ring, footprint));
  });
  before = { report, pieces, mats: mats.length === all.length ? all : mats };
  return before.mats;
}

function doMeet(p: Polygon, q: Polygon): boolean {
  if (!boxesMeet(boundingBox(p), boundingBox(q))) return false;
  const [a, b] = [p[0], q[0]];
  if ((a && contains(q, a)) || (b && contains(p, b))) return true;
  return edges(p).some((s) => edges(q).some((t) => segmentsMeet(s, t)));
}
