import type { Edit } from '#model/findings/edit.ts';
import type { Arrangement, Fixture, Piece, Side } from '#model/schema/types.ts';

const others: Readonly<Record<Side, Side>> = { front: 'front', back: 'back', left: 'right', right: 'left' };

type Shape = Pick<Piece, 'outline'>;

/** The outline seen in a mirror, still the same way round. */
const mirroredOutline = ({ outline }: Shape): Shape =>
  outline ? { outline: outline.map(([x, y]): [number, number] => [-x, y]).reverse() } : {};

/** What of a piece changes with its left and right: chairs at its sides, the open sides of a shelf and the trays on those. */
export function mirrorEdits(arrangement: Pick<Arrangement, 'placements'>, piece: Piece): Edit[] {
  const set: Partial<Piece> = { ...mirroredOutline(piece) };
  const { left, right } = piece.seatSides;
  if (left !== right) {
    const { left: _, right: __, ...rest } = piece.seatSides;
    set.seatSides = { ...rest, ...(right !== undefined && { left: right }), ...(left !== undefined && { right: left }) };
  }
  const isOneSided = piece.sides.includes('left') !== piece.sides.includes('right');
  if (isOneSided) set.sides = piece.sides.map((side) => others[side]);
  const edits: Edit[] = Object.keys(set).length === 0 ? [] : [{ do: 'change-piece', piece: piece.id, set }];
  if (!isOneSided) return edits;
  for (const placement of arrangement.placements)
    if (placement.piece === piece.id && others[placement.side] !== placement.side)
      edits.push({ do: 'place', placement: { ...placement, side: others[placement.side] } });
  return edits;
}

/** The stations of the walk round the shelves, whose open ends have changed sides; null: none has. */
export function mirroredWalk(arrangement: Pick<Arrangement, 'walk'>, pieces: readonly Piece[]): Arrangement['walk'] | null {
  const turned = new Set(pieces.filter(({ sides }) => sides.includes('left') !== sides.includes('right')).map(({ id }) => id));
  if (!arrangement.walk?.some(({ piece, side }) => turned.has(piece) && others[side] !== side)) return null;
  return arrangement.walk.map((stop) => (turned.has(stop.piece) ? { ...stop, side: others[stop.side] } : stop));
}

export const mirroredFixture = (fixture: Fixture): Partial<Fixture> => mirroredOutline(fixture as Shape);
