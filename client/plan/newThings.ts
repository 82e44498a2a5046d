import type { New } from '#model/document/types.ts';
import type { Fixture, Level, Opening, Piece } from '#model/schema/types.ts';
import type { NewSize, Tool } from './planStore.ts';

/** Sizes a new thing starts with, mm: common practice for children of three to six, no source. Measure and type your own. */
const pieceSizes: Readonly<Record<Piece['kind'], NewSize>> = {
  shelf: { width: 1200, depth: 320, height: 700 },
  table: { width: 1200, depth: 600, height: 530 },
  seat: { width: 320, depth: 320, height: 300 },
  'mat-stand': { width: 600, depth: 400, height: 600 },
  easel: { width: 600, depth: 600, height: 1100 },
  rug: { width: 2000, depth: 1500, height: null },
  'adult-seat': { width: 450, depth: 450, height: 400 },
  other: { width: 600, depth: 400, height: 600 },
};
const fixtureSizes: Readonly<Record<Fixture['kind'], NewSize>> = {
  sink: { width: 1000, depth: 500, height: 560 },
  column: { width: 300, depth: 300, height: null },
  partition: { width: 1500, depth: 100, height: 1200 },
  radiator: { width: 1200, depth: 120, height: 600 },
  hearth: { width: 1200, depth: 500, height: null },
  'built-in': { width: 1000, depth: 600, height: 2000 },
  step: { width: 1200, depth: 300, height: 150 },
  other: { width: 600, depth: 400, height: null },
};
const openingSizes: Readonly<Record<Opening['kind'], NewSize>> = {
  door: { width: 900, depth: 0, height: null },
  window: { width: 1200, depth: 0, height: null },
  passage: { width: 1000, depth: 0, height: null },
};

export function sizeFor(tool: Tool): NewSize {
  if (tool.kind === 'piece') return pieceSizes[tool.of];
  if (tool.kind === 'fixture') return fixtureSizes[tool.of];
  return tool.kind === 'opening' ? openingSizes[tool.of] : { width: 0, depth: 0, height: null };
}

type Placed = { x: number; y: number; rotation: number };

/** A new piece with what its kind needs to be judged at once. */
export function newPiece(
  of: Piece['kind'],
  size: NewSize,
  at: Placed,
  name: string,
): New<Piece> & Pick<Piece, 'kind' | 'x' | 'y' | 'width' | 'depth'> {
  const piece = { kind: of, name, ...at, width: size.width, depth: size.depth, height: size.height };
  if (of === 'shelf') return { ...piece, levels: boardsFor(size.height ?? 700) };
  if (of === 'table') return { ...piece, seatSides: { front: 2, back: 2 } };
  return piece;
}

/** Three boards: low, middle, and just below the top (640, 350 and 60 in a shelf of 700). */
export function boardsFor(height: number): Level[] {
  const top = Math.max(0, height - 60);
  const low = Math.min(60, top);
  const middle = Math.round((low + top) / 20) * 10;
  const surfaces = top - low < 300 ? [top, ...(top > low ? [low] : [])] : [top, middle, low];
  return surfaces.map((surface, i) => ({ id: `l${i + 1}`, surface, clear: null, depth: null, setBack: 0 }));
}

/** The first door is the main way in and out until somebody says otherwise. */
export function newOpening(
  of: Opening['kind'],
  place: { from: string; offset: number; width: number },
  isFirstWayIn: boolean,
): New<Opening> & Pick<Opening, 'kind' | 'from' | 'offset' | 'width'> {
  const opening = { kind: of, ...place };
  if (of === 'window') return { ...opening, sill: 900, swing: 'none' };
  if (of === 'passage') return { ...opening, swing: 'none', exit: isFirstWayIn };
  return { ...opening, swing: 'out-left', exit: isFirstWayIn };
}
