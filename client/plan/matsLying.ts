import type { Report } from '#model/analysis/report.ts';
import { type Box, boundingBox, boxesMeet, contains, edges, type Polygon, segmentsMeet } from '#model/geometry/polygon.ts';
import { keptWith } from '#model/scene/kept.ts';
import type { Piece } from '#model/schema/types.ts';
import { bodyOfPiece } from './bodies.ts';
import { cornersOf } from './box.ts';
import { type MatPlace, matsLaid } from './reportParts.ts';

/** mm that a mat may lie under a thing's edge: it was laid right beside it */
const TOUCHING = 10;

interface Laid {
  readonly mats: readonly MatPlace[];
  /** Those that a piece stands on. */
  readonly under: (piece: Piece) => readonly MatPlace[];
}
interface Shape {
  readonly ring: Polygon;
  readonly box: Box;
}

let before: { readonly laid: Laid; readonly pieces: readonly Piece[]; readonly mats: readonly MatPlace[] } | null = null;

/** The mats of the report that nothing has been put on since: until the checks have looked again, an old one does not claim its floor. */
export function matsLying(report: Report | null, pieces: readonly Piece[]): readonly MatPlace[] {
  const reported = report?.measures.mats;
  const laid = typeof reported === 'object' && reported !== null ? laidIn(reported) : none;
  if (before?.laid === laid && before.pieces === pieces) return before.mats;
  const covered = new Set(pieces.flatMap((piece) => laid.under(piece)));
  const mats = covered.size === 0 ? laid.mats : laid.mats.filter((mat) => !covered.has(mat));
  before = { laid, pieces, mats };
  return mats;
}

const none: Laid = { mats: [], under: () => [] };
const nothing: readonly MatPlace[] = [];

/** Asked at each step of a drag, in which one piece of hundreds is another: what the others stand on is known. */
const laidIn = keptWith((reported: object): Laid => {
  const mats = matsLaid(reported);
  const shapes = mats.map((mat): Shape => {
    const ring = cornersOf({ ...mat, width: mat.width - 2 * TOUCHING, depth: mat.depth - 2 * TOUCHING });
    return { ring, box: boundingBox(ring) };
  });
  const under = (piece: Piece): readonly MatPlace[] => {
    if (piece.kind === 'rug' || mats.length === 0) return nothing;
    const ring = bodyOfPiece(piece).footprint;
    const own: Shape = { ring, box: boundingBox(ring) };
    const found = mats.filter((_, i) => doMeet(shapes[i] as Shape, own));
    return found.length === 0 ? nothing : found;
  };
  return { mats, under: keptWith(under) };
});

function doMeet(p: Shape, q: Shape): boolean {
  if (!boxesMeet(p.box, q.box)) return false;
  const [a, b] = [p.ring[0], q.ring[0]];
  if ((a && contains(q.ring, a)) || (b && contains(p.ring, b))) return true;
  return edges(p.ring).some((s) => edges(q.ring).some((t) => segmentsMeet(s, t)));
}
