import { areaCode } from '#model/catalogue/areas.ts';
import type { Arrangement, Material, Piece } from '#model/schema/types.ts';

/** An area as materials name it; the strand is kept only where it has a hatch of its own (art). */
export interface ShelfArea {
  readonly area: string;
  readonly strand: string;
}

function areaOf({ area, strand }: Pick<Material, 'area' | 'strand'>): ShelfArea {
  return { area, strand: areaCode(area, strand) === 'AR' ? strand : '' };
}

const plain = (area: string): ShelfArea => ({ area, strand: '' });
const hints: readonly (readonly [RegExp, ShelfArea])[] = [
  [/\bpractical|\bdressing|\bpouring|\bcare of/, plain('practical-life')],
  [/\bsens/, plain('sensorial')],
  [/\bmath|\bnumber|\bcount|\btens\b/, plain('mathematics')],
  [/\blang|\bread|\bwrit|\bletter/, plain('language')],
  [/\bart\b|\bdrawing|\bcraft/, { area: 'culture', strand: 'art' }],
  [/\bcultur|\bgeogra|\bscience|\bbotan|\bzoolog|\bland\b|\bmap|\bhistory|\bmusic|\bliving/, plain('culture')],
];

/** The area that a shelf's name speaks of; null: none. */
export function areaInName(name: string): ShelfArea | null {
  const words = name.toLowerCase().replaceAll('-', ' ');
  return hints.find(([pattern]) => pattern.test(words))?.[1] ?? null;
}

type Shelves = Pick<Arrangement, 'pieces' | 'placements'>;
const kept = new WeakMap<readonly Piece[], { placements: unknown; materials: unknown; areas: ReadonlyMap<string, ShelfArea> }>();

/** The area of each shelf: that of most of its trays; an empty one is read from its name. */
export function areasOfShelves(arrangement: Shelves, materials: readonly Material[]): ReadonlyMap<string, ShelfArea> {
  const known = kept.get(arrangement.pieces);
  if (known?.placements === arrangement.placements && known.materials === materials) return known.areas;
  const areas = findAreas(arrangement, materials);
  kept.set(arrangement.pieces, { placements: arrangement.placements, materials, areas });
  return areas;
}

function findAreas(arrangement: Shelves, materials: readonly Material[]): Map<string, ShelfArea> {
  const areaById = new Map(materials.map((material) => [material.id, areaOf(material)]));
  const counts = new Map<string, Map<string, Count>>();
  for (const placement of arrangement.placements) {
    const area = areaById.get(placement.material);
    if (!area?.area || placement.piece === null) continue;
    const ofPiece = counts.get(placement.piece) ?? new Map<string, Count>();
    const key = `${area.area}/${area.strand}`;
    ofPiece.set(key, { area, count: (ofPiece.get(key)?.count ?? 0) + 1 });
    counts.set(placement.piece, ofPiece);
  }
  return new Map(
    arrangement.pieces.flatMap((piece): [string, ShelfArea][] => {
      if (piece.kind !== 'shelf') return [];
      const area = commonest(counts.get(piece.id)) ?? areaInName(piece.name);
      return area ? [[piece.id, area]] : [];
    }),
  );
}

interface Count {
  readonly area: ShelfArea;
  readonly count: number;
}

function commonest(counts: ReadonlyMap<string, Count> | undefined): ShelfArea | null {
  let best: Count | null = null;
  for (const entry of counts?.values() ?? []) if (!best || entry.count > best.count) best = entry;
  return best?.area ?? null;
}
