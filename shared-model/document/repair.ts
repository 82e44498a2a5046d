import type { Arrangement, Classroom, Corner, Material, Opening, Piece, Placement, Room } from '../schema/types.ts';
import { freezeDeep } from './plain.ts';
import { sameFields, sameList } from './remember.ts';
import type { NeedsRepair } from './types.ts';

/** The id of the arrangement that stands in when people who had not met took away every one. */
const STAND_IN_ARRANGEMENT = 'empty';
/** mm: a room that nobody drew yet. */
const STAND_IN_ROOM = { width: 8000, depth: 6000 };

/**
 * Makes a merged classroom coherent by reading it so, never by writing: two devices that both
 * "repaired" would fight, and what points at nothing now may point at something again (taking back).
 * The same entries give the same answer on every device.
 */
export interface Repairer {
  repair(raw: Classroom): { classroom: Classroom; problems: readonly NeedsRepair[] };
}

export function createRepairer(): Repairer {
  let last: { raw: Classroom; answer: { classroom: Classroom; problems: readonly NeedsRepair[] } } | null = null;
  let room: Room | undefined;
  let classroom: Classroom | undefined;
  const arrangements = new Map<string, { raw: Arrangement; materials: readonly Material[]; repaired: Arrangement }>();

  const repairArrangement = (raw: Arrangement, materials: readonly Material[], ids: () => ReadonlySet<string>): Arrangement => {
    const kept = arrangements.get(raw.id);
    if (kept && kept.raw === raw && kept.materials === materials) return kept.repaired;
    const repaired = coherent(raw, ids(), kept?.repaired);
    arrangements.set(raw.id, { raw, materials, repaired });
    return repaired;
  };

  const repair: Repairer['repair'] = (raw) => {
    if (last && last.raw === raw) return last.answer;
    const problems: NeedsRepair[] = [];
    room = repairRoom(raw, room, problems);
    const materialIds = lazily(() => new Set(raw.materials.map((material) => material.id)));
    const list = raw.arrangements.map((arrangement) => repairArrangement(arrangement, raw.materials, materialIds));
    const first = list[0];
    if (!first) problems.push({ path: 'arrangements', found: 'none', expected: 'at least one arrangement; an empty one stands in' });
    const materials = sameList(
      classroom?.materials,
      raw.materials.map((material) => coherentMaterial(material, materialIds)),
    );
    const subjects = lazily(() => subjectsOf(raw));
    const isThere = raw.current !== null && list.some((a) => a.id === raw.current);
    classroom = sameFields(classroom, {
      ...raw,
      room,
      materials,
      arrangements: sameList(classroom?.arrangements, first ? list : [standInArrangement]),
      current: isThere || raw.current === null ? raw.current : (first ?? standInArrangement).id,
      notes: sameList(
        classroom?.notes,
        raw.notes.map((note, index) => {
          if (note.on === null || subjects().has(note.on)) return note;
          const before = classroom?.notes[index];
          return sameFields(before?.id === note.id ? before : undefined, { ...note, on: null });
        }),
      ),
    });
    last = { raw, answer: { classroom, problems } };
    return last.answer;
  };
  return { repair };
}

function lazily<T>(make: () => T): () => T {
  let made: { value: T } | null = null;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}

/** Everything a remark can be on. */
const subjectsOf = (raw: Classroom): Set<string> =>
  new Set(
    [...raw.arrangements.flatMap((a) => a.pieces), ...raw.room.fixtures, ...raw.room.openings, ...raw.room.corners, ...raw.materials].map(
      ({ id }) => id,
    ),
  );

const standInArrangement: Arrangement = freezeDeep({ id: STAND_IN_ARRANGEMENT, name: '', pieces: [], placements: [] });

/** A classroom that a file may hold: what no file may lack stands in, references stay as they are. */
export function fitForFile(raw: Classroom): Classroom {
  const room = repairRoom(raw, undefined, [], 'corners only');
  return { ...raw, room, arrangements: raw.arrangements.length > 0 ? raw.arrangements : [standInArrangement] };
}

function coherent(raw: Arrangement, materials: ReadonlySet<string>, before: Arrangement | undefined): Arrangement {
  const pieceById = new Map(raw.pieces.map((piece) => [piece.id, piece]));
  const pieces = raw.pieces.map((piece) => {
    if (piece.table === null || pieceById.has(piece.table)) return piece;
    const known = before?.pieces.find((p) => p.id === piece.id);
    return sameFields(known, { ...piece, table: null });
  });
  const placements = raw.placements.filter((placement) => materials.has(placement.material) && stands(placement, pieceById));
  const seen = new Set<string>();
  const walk = raw.walk?.filter((step) => {
    const key = `${step.piece}/${step.side}`;
    if (!pieceById.has(step.piece) || seen.has(key)) return false;
    seen.add(key);
    return true;
  });
  return sameFields(before, {
    ...raw,
    pieces: sameList(before?.pieces, pieces),
    placements: sameList(before?.placements, placements),
    ...(walk && { walk: sameList(before?.walk, walk) }),
  });
}

/** A tray whose shelf or board is gone is on the table, which a file says by no placement. */
function stands(placement: Placement, pieceById: ReadonlyMap<string, Piece>): boolean {
  if (placement.piece === null) return true;
  const piece = pieceById.get(placement.piece);
  if (!piece) return false;
  return placement.level === null || piece.levels.some((level) => level.id === placement.level);
}

const onOwnTrays = new WeakMap<Material, Material>();
/** A material that stood with one that is gone stands on its own tray. */
function coherentMaterial(material: Material, ids: () => ReadonlySet<string>): Material {
  if (typeof material.stands === 'string' || ids().has(material.stands.with)) return material;
  const known = onOwnTrays.get(material);
  if (known) return known;
  const alone: Material = Object.freeze({ ...material, stands: 'own' as const });
  onOwnTrays.set(material, alone);
  return alone;
}

function repairRoom(raw: Classroom, before: Room | undefined, problems: NeedsRepair[], how: 'all' | 'corners only' = 'all'): Room {
  const seen = new Set<string>();
  // Two people who move one corner in the list leave it twice: the first one counts.
  const once = raw.room.corners.filter((corner) => !seen.has(corner.id) && seen.add(corner.id));
  let corners = once;
  if (once.length < 3) {
    corners = standInCorners(raw, once);
    problems.push({ path: 'corners', found: String(once.length), expected: 'at least 3 corners; a plain rectangle stands in' });
  }
  const ids = new Set(corners.map((corner) => corner.id));
  const openings: Opening[] = raw.room.openings.filter((opening) => {
    if (how === 'corners only' || ids.has(opening.from)) return true;
    problems.push({ path: `openings.${opening.id}.from`, found: opening.from, expected: 'a corner that is there' });
    return false;
  });
  return sameFields(before, {
    ...raw.room,
    corners: sameList(before?.corners, corners),
    openings: sameList(before?.openings, openings),
  });
}

/** A rectangle about what is left, so that the sheets can be shown and the walls drawn anew. */
function standInCorners(raw: Classroom, left: readonly Corner[]): Corner[] {
  const points = [...left, ...raw.room.fixtures, ...(raw.arrangements[0]?.pieces ?? [])];
  const xs = points.map((p) => p.x);
  const ys = points.map((p) => p.y);
  const x = xs.length > 0 ? Math.min(...xs) : 0;
  const y = ys.length > 0 ? Math.min(...ys) : 0;
  const right = Math.max(x + STAND_IN_ROOM.width, ...xs);
  const bottom = Math.max(y + STAND_IN_ROOM.depth, ...ys);
  const around = [
    [x, y],
    [right, y],
    [right, bottom],
    [x, bottom],
  ] as const;
  return freezeDeep(around.map(([cx, cy], index) => ({ id: `stand-in-${index + 1}`, x: cx, y: cy })));
}
