import type { Version } from '#model/document/version.ts';
import { type Box, boundingBox } from '#model/geometry/polygon.ts';
import type { Point } from '#model/geometry/vec.ts';
import type { SceneBody } from '#model/scene/types.ts';
import type { Piece } from '#model/schema/types.ts';
import { bodyOfPiece } from '../plan/bodies.ts';
import type { PieceLook } from '../plan/draw/drawPiece.ts';
import { drawPiece } from '../plan/draw/drawPiece.ts';
import { ringOf } from '../plan/draw/drawShape.ts';
import { fill, type Pen, path, stroke, write } from '../plan/draw/pen.ts';
import { type Conflict, conflictsOf } from '../session/conflicts.ts';
import type { Session } from '../session/types.ts';
import { colours, dashes } from '../styles/tokens.ts';

interface TwoPlaces {
  readonly mine: SceneBody;
  readonly theirs: SceneBody;
  readonly by: string;
}

/** Pieces that two people put in two places: until it is settled both are drawn, mine in ink, theirs dashed. */
export function conflictsOnPlan(session: Session): ReadonlyMap<string, TwoPlaces> {
  const { id: shown, pieces } = session.arrangement();
  const found = new Map<string, TwoPlaces>();
  for (const conflict of conflictsOf(session).list()) {
    const [root, arrangement, list, id] = conflict.path;
    if (root !== 'arrangements' || arrangement !== shown || list !== 'pieces' || conflict.path.length !== 4) continue;
    const piece = pieces.find((one) => one.id === id);
    const mine = piece && withMine(piece, conflict);
    if (piece && mine) found.set(piece.id, { mine: bodyOfPiece(mine), theirs: bodyOfPiece(piece), by: conflict.by || 'theirs' });
  }
  return found;
}

/** null: what differs is not seen from above. */
function withMine(piece: Piece, { fields }: Conflict): Piece | null {
  const seen = ['x', 'y', 'rotation', 'width', 'depth'] as const;
  const set: Partial<Record<(typeof seen)[number], number>> = {};
  for (const key of seen) {
    const value = plain(fields[key]?.mine);
    if (typeof value === 'number') set[key] = value;
  }
  return Object.keys(set).length === 0 ? null : { ...piece, ...set };
}

const plain = (version: Version | undefined): unknown => (version && 'value' in version ? version.value : undefined);

export function drawConflicts(pen: Pen, places: ReadonlyMap<string, TwoPlaces>, look: (id: string) => PieceLook): void {
  for (const [id, { mine, theirs, by }] of places) {
    const ring = ringOf(pen, theirs);
    path(pen, ring);
    fill(pen, colours.leaf);
    stroke(pen, { colour: colours.pencil, width: 1.6, dash: dashes.proposed });
    drawPiece(pen, mine, look(id));
    const here = boundingBox(ringOf(pen, mine));
    // Under it: above it stand the initials of who holds it.
    const long = name(pen, 'mine', { x: here.minX, y: here.maxY + 10 }, 'left', colours.ink);
    name(pen, by, ...besideOf(boundingBox(ring), here, long), colours.pencilText);
  }
}

/**
 * Where theirs is named: at its side away from mine, so that neither name lies on the other, however near the two stand. px
 * @param long of the name of mine, which begins at its left edge
 */
export function besideOf(theirs: Box, mine: Box, long: number): [Point, 'left' | 'right'] {
  const y = (theirs.minY + theirs.maxY) / 2;
  if (theirs.minX < mine.minX) return [{ x: theirs.minX - 6, y }, 'right'];
  return [{ x: Math.max(theirs.maxX + 6, mine.minX + long + 9), y }, 'left'];
}

const name = (pen: Pen, text: string, where: Point, align: 'left' | 'right', colour: string): number =>
  write(pen, text, where, { size: 11, weight: 700, colour, align, ground: colours.leaf });
