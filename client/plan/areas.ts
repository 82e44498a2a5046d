import type { Arrangement, Material, Piece } from '#model/schema/types.ts';

/** Two letters and a hatch: an area is known without its colour. */
export type AreaCode = 'PL' | 'SE' | 'MA' | 'LA' | 'CU' | 'AR';

const words: Readonly<Record<AreaCode, string>> = {
  PL: 'practical life',
  SE: 'sensorial',
  MA: 'mathematics',
  LA: 'language',
  CU: 'culture',
  AR: 'art',
};
export const areaWords = (code: AreaCode): string => words[code];

/** The code of a material; art is a strand of culture with a hatch of its own. */
export function areaOf(material: Pick<Material, 'area' | 'strand'>): AreaCode | null {
  const area = readArea(material.area);
  return area === 'CU' && /\bart\b/i.test(material.strand ?? '') ? 'AR' : area;
}

/** Free text to a code; own names of areas are read by their first words. */
export function readArea(text: string | null | undefined): AreaCode | null {
  const plain = (text ?? '').toLowerCase().replaceAll('-', ' ');
  if (/\bpractical|\bdressing|\bpouring|\bcare of/.test(plain)) return 'PL';
  if (/\bsens/.test(plain)) return 'SE';
  if (/\bmath|\bnumber|\bcount|\btens\b/.test(plain)) return 'MA';
  if (/\blang|\bread|\bwrit|\bletter/.test(plain)) return 'LA';
  if (/\bart\b|\bdrawing|\bcraft/.test(plain)) return 'AR';
  if (/\bcultur|\bgeogra|\bscience|\bbotan|\bzoolog|\bland\b|\bmap|\bhistory|\bmusic|\bliving/.test(plain)) return 'CU';
  return null;
}

/** The area of each shelf: that of most of its trays; an empty one is read from its name. */
export function areasOfShelves(
  arrangement: Pick<Arrangement, 'pieces' | 'placements'>,
  materialById: ReadonlyMap<string, Material>,
): ReadonlyMap<string, AreaCode> {
  const counts = new Map<string, Map<AreaCode, number>>();
  for (const placement of arrangement.placements) {
    const material = materialById.get(placement.material);
    const area = material && areaOf(material);
    if (!area || placement.piece === null) continue;
    const ofPiece = counts.get(placement.piece) ?? new Map<AreaCode, number>();
    ofPiece.set(area, (ofPiece.get(area) ?? 0) + 1);
    counts.set(placement.piece, ofPiece);
  }
  return new Map(
    arrangement.pieces.flatMap((piece): [string, AreaCode][] => {
      if (piece.kind !== 'shelf') return [];
      const area = commonest(counts.get(piece.id)) ?? areaFromName(piece);
      return area ? [[piece.id, area]] : [];
    }),
  );
}

const areaFromName = (piece: Piece): AreaCode | null => readArea(piece.name);

function commonest(counts: ReadonlyMap<AreaCode, number> | undefined): AreaCode | null {
  let best: AreaCode | null = null;
  let most = 0;
  for (const [area, count] of counts ?? []) {
    if (count <= most) continue;
    most = count;
    best = area;
  }
  return best;
}
