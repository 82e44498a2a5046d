import type { Point } from '../../geometry/vec.ts';
import { buildScene } from '../../scene/build.ts';
import type { Scene, SceneBody } from '../../scene/types.ts';
import type { Classroom } from '../../schema/types.ts';
import { type Packed, packCrates } from './crates.ts';
import { type PieceChange, pairPieces, pieceChanges } from './differences.ts';
import { MoveFloor } from './floor.ts';
import { type MovePath, pathOf, type StandsBy, standsBy } from './paths.ts';
import { CRATE_KG, TRAYS_A_STEP, TWO_PEOPLE } from './practice.ts';
import { type Sequence, sequenceOf, type UnitEvent } from './sequence.ts';
import type { Precedence } from './setAside.ts';
import { placeOf, type TrayChange, trayChanges } from './trayChanges.ts';
import { clashes, type MoveUnit, moveUnits, precedencesOf } from './units.ts';
import { type ReducedWaits, reduceWaits } from './waits.ts';

/** Why a step waits for another. */
export interface Wait {
  readonly step: string;
  readonly why: 'emptied' | 'in-the-way' | 'rug' | 'aside' | 'moved' | 'boards' | 'crates' | 'floor' | 'all' | 'beside';
}

export interface MoveStep {
  /** Stays the same as long as it is about the same things: ticks hang on it. */
  readonly id: string;
  readonly does: UnitEvent['does'] | 'empty' | 'boards' | 'fill' | 'trays' | 'mats' | 'tape';
  /** Index of the unit that is moved; null: none. */
  readonly unit: number | null;
  /** Ids of the pieces it is about, as in the earlier arrangement, new ones as in the later. */
  readonly pieces: readonly string[];
  readonly materials: readonly string[];
  /** Letters of crates. */
  readonly crates: readonly string[];
  readonly path: MovePath | null;
  /** Where the piece stands afterwards; null: nothing is set down, or no floor was found for it. */
  readonly stands: SceneBody | null;
  readonly by: StandsBy | null;
  readonly people: 1 | 2;
  /** Too long or too high for one person. */
  readonly isLarge: boolean;
  /** Held by the wall now; look: not known. */
  readonly unfasten: 'yes' | 'look' | null;
  /** To be held by the wall afterwards; loose: it is not, though it may be high enough to tip; look: not known. */
  readonly fasten: 'yes' | 'loose' | 'look' | null;
  /** Things that stand in the same place in the later arrangement itself: no order helps. */
  readonly overlaps: readonly string[];
  readonly waits: readonly Wait[];
  /** Ids of steps it waits for, without those that these wait for. */
  readonly after: readonly string[];
}

export interface MovePlan {
  readonly from: Scene;
  readonly to: Scene;
  readonly changes: readonly PieceChange[];
  readonly trays: readonly TrayChange[];
  readonly units: readonly MoveUnit[];
  readonly sequence: Sequence;
  readonly floor: MoveFloor;
  readonly packed: Packed;
  readonly steps: readonly MoveStep[];
  /** The id in the earlier arrangement of a piece of the later one. */
  readonly earlierId: (piece: string) => string;
}

interface Draft extends Omit<MoveStep, 'after' | 'waits'> {
  readonly waits: Wait[];
}

const plain = {
  unit: null,
  pieces: [],
  materials: [],
  crates: [],
  path: null,
  stands: null,
  by: null,
  people: 1,
  isLarge: false,
  unfasten: null,
  fasten: null,
  overlaps: [],
} as const;

/**
 * What is done on the day of the move from one arrangement to another, in an order that works: nothing is set down where
 * something still stands, shelves are emptied before they are moved and filled after.
 * @param mostKg kg in one crate
 * @throws Error when the classroom has no arrangement (the schema refuses such a file)
 */
export function planMove(classroom: Classroom, fromId: string, toId: string, mostKg: number = CRATE_KG): MovePlan {
  const from = buildScene(classroom, fromId);
  const to = buildScene(classroom, toId);
  const ids = new Map(
    pairPieces(from.arrangement.pieces, to.arrangement.pieces).flatMap(({ before, after }): [string, string][] =>
      before && after ? [[after.id, before.id]] : [],
    ),
  );
  const earlierId = (piece: string): string => ids.get(piece) ?? piece;
  const changes = pieceChanges(from.arrangement, to.arrangement);
  const trays = trayChanges(from, to, earlierId);
  const units = moveUnits(changes);
  const precedences = precedencesOf(units);
  const floor = new MoveFloor(from, units);
  const sequence = sequenceOf(units, precedences, floor);
  const day = { from, to, changes, trays, units, sequence, floor, earlierId };
  const emptied = shelvesToEmpty(day);
  const crated = from.classroom.materials.filter(({ id }) => isCrated(day, emptied, id));
  const filled = shelvesToFill(
    day,
    crated.map(({ id }) => id),
    emptied,
  );
  const packed = packCrates(crated, to, earlierId, filled, mostKg);
  const drafts = draftSteps(day, precedences, emptied, filled, packed);
  const reduced: ReducedWaits = reduceWaits(drafts.map(({ id, waits }) => ({ id, waits: waits.map(({ step }) => step) })));
  return { ...day, packed, steps: drafts.map((draft) => ({ ...draft, after: reduced.get(draft.id) ?? [] })) };
}

type Day = Omit<MovePlan, 'packed' | 'steps'>;

/** Pieces with trays that are carried, or get other boards; those that move first, first. */
function shelvesToEmpty({ from, changes, units, sequence }: Day): string[] {
  const loaded = new Set([...from.stands.values()].flatMap(({ placement }) => placement.piece ?? []));
  const order = sequence.events.flatMap(({ unit }) => units[unit]?.from.map(({ id }) => id) ?? []);
  const boards = changes.filter((change) => change.before && change.after && change.hasOtherBoards).map(({ id }) => id);
  return [...new Set([...order, ...boards])].filter((id) => loaded.has(id));
}

function isCrated({ from, to, earlierId }: Day, emptied: readonly string[], material: string): boolean {
  const before = placeOf(from.stands.get(material), (id) => id);
  if (!before) return false;
  const after = placeOf(to.stands.get(material), earlierId);
  return emptied.includes(before.piece) || (after !== null && emptied.includes(after.piece));
}

/** Pieces that trays come to from crates, or from anywhere where they were emptied or are new. */
function shelvesToFill({ to, earlierId, changes }: Day, crated: readonly string[], emptied: readonly string[]): string[] {
  const news = changes.filter(({ before, after }) => !before && after).map(({ id }) => id);
  const inCrates = new Set(crated);
  const targets = [...to.stands.values()].flatMap((tray) => {
    const place = placeOf(tray, earlierId);
    if (!place) return [];
    return inCrates.has(tray.material.id) || emptied.includes(place.piece) || news.includes(place.piece) ? [place.piece] : [];
  });
  const all = new Set(targets);
  return [...emptied, ...news, ...all].filter((id, i, list) => all.has(id) && list.indexOf(id) === i);
}

function draftSteps(
  day: Day,
  precedences: readonly Precedence[],
  emptied: readonly string[],
  filled: readonly string[],
  packed: Packed,
): Draft[] {
  const { sequence, changes, from, to, earlierId, trays } = day;
  const traysOn = (scene: Scene, piece: string, idOf: (id: string) => string): string[] =>
    [...scene.stands.values()].filter((tray) => placeOf(tray, idOf)?.piece === piece).map(({ material }) => material.id);
  const fromShelf = (piece: string): string[] => traysOn(from, piece, (id) => id);
  const crateOf = new Map(packed.crates.flatMap(({ letter, materials }) => materials.map((id): [string, string] => [id, letter])));
  const lettersOf = (materials: readonly string[]): string[] =>
    packed.crates.map(({ letter }) => letter).filter((letter) => materials.some((id) => crateOf.get(id) === letter));

  const empties = chunked(emptied, (id) => fromShelf(id).length).map((pieces): Draft => {
    const extra = from.classroom.materials.filter(
      ({ id }) => crateOf.has(id) && pieces.includes(placeOf(to.stands.get(id), earlierId)?.piece ?? ''),
    );
    const own = new Set(pieces.flatMap(fromShelf));
    const others = extra.filter(({ id }) => !own.has(id) && !emptied.includes(placeOf(from.stands.get(id), (p) => p)?.piece ?? ''));
    const materials = [...own, ...others.map(({ id }) => id)];
    return { ...plain, id: `empty:${pieces.join('+')}`, does: 'empty', pieces, materials, crates: lettersOf(materials), waits: [] };
  });
  const emptyingOf = (piece: string): Wait[] =>
    empties.filter(({ pieces }) => pieces.includes(piece)).map(({ id }) => ({ step: id, why: 'emptied' }));

  const moves = sequence.events.map((event, k): Draft => moveStep(day, event, k, precedences, emptyingOf));
  const last = new Map<string, string>();
  for (const { id, pieces } of moves) for (const piece of pieces) last.set(piece, id);

  const boards = changes
    .filter(({ before, after, hasOtherBoards, isExchanged }) => before && after && hasOtherBoards && !isExchanged)
    .map(({ id }): Draft => {
      const moved = last.get(id);
      const waits: Wait[] = moved === undefined ? emptyingOf(id) : [{ step: moved, why: 'moved' }];
      return { ...plain, id: `boards:${id}`, does: 'boards', pieces: [id], waits };
    });

  const fills = chunked(filled, (id) => traysOn(to, id, earlierId).length).map((pieces): Draft => {
    const materials = pieces.flatMap((piece) => traysOn(to, piece, earlierId));
    const crates = lettersOf(materials);
    const waits: Wait[] = [];
    for (const piece of pieces) {
      const moved = last.get(piece);
      if (moved !== undefined) waits.push({ step: moved, why: 'moved' });
      if (boards.some(({ id }) => id === `boards:${piece}`)) waits.push({ step: `boards:${piece}`, why: 'boards' });
    }
    for (const { id, materials: inside } of empties) if (inside.some((m) => materials.includes(m))) waits.push({ step: id, why: 'crates' });
    return { ...plain, id: `fill:${pieces.join('+')}`, does: 'fill', pieces, materials, crates, waits };
  });

  const steps = [...empties, ...moves, ...boards, ...fills, ...trayStepsOf(trays, new Set([...crateOf.keys(), ...packed.byHand]), filled)];
  const floorSteps = [...moves, ...fills];
  if (moves.length > 0) steps.push({ ...plain, id: 'mats', does: 'mats', waits: floorSteps.map(({ id }) => ({ step: id, why: 'floor' })) });
  if (moves.length > 0) steps.push({ ...plain, id: 'tape', does: 'tape', waits: steps.map(({ id }) => ({ step: id, why: 'all' })) });
  return steps;
}

/** Trays that change places on shelves that stay: by the shelf they come to, or leave for the table. */
function trayStepsOf(trays: readonly TrayChange[], isPacked: ReadonlySet<string>, filled: readonly string[]): Draft[] {
  const byShelf = new Map<string, string[]>();
  for (const { material, from, to } of trays) {
    if (isPacked.has(material)) continue;
    const piece = (to ?? from)?.piece;
    if (piece === undefined || (to && filled.includes(to.piece))) continue;
    byShelf.set(piece, [...(byShelf.get(piece) ?? []), material]);
  }
  return [...byShelf].map(([piece, materials]) => ({
    ...plain,
    id: `trays:${piece}`,
    does: 'trays',
    pieces: [piece],
    materials,
    waits: [],
  }));
}

function moveStep(
  day: Day,
  { unit: index, does }: UnitEvent,
  k: number,
  precedences: readonly Precedence[],
  emptyingOf: (piece: string) => Wait[],
): Draft {
  const { units, sequence, from } = day;
  const unit = units[index] as MoveUnit;
  const pieces = unit.changes.map(({ id }) => id);
  const lead = unit.changes[0] as PieceChange;
  const start = does === 'back' ? (sequence.places.get(index)?.[0] ?? null) : (unit.from[0] ?? null);
  const end = does === 'aside' ? (sequence.places.get(index)?.[0] ?? null) : (unit.to[0] ?? null);
  const standing = standingDuring(day, k);
  const path = start && end ? (unit.isRug || lead.isExchanged ? carried(start, end) : pathOf(start, end, standing, from.room)) : null;
  const ahead = path?.how === 'slide' ? (path.legs.at(-1) ?? null) : null;
  const size = lead.after ?? lead.before;
  const isLarge = [lead.before, lead.after].some(
    (piece) => piece && (Math.max(piece.width, piece.depth) >= TWO_PEOPLE.long || (piece.height ?? 0) >= TWO_PEOPLE.high),
  );
  const waits: Wait[] = [];
  if (does !== 'back') for (const piece of pieces) waits.push(...emptyingOf(piece));
  if (does === 'back') waits.push({ step: stepId('aside', lead.id), why: 'aside' });
  for (const { first, second, kind } of precedences) {
    // A unit set aside leaves and comes at two times.
    if (second !== index || (kind === 'off-off' ? does === 'back' : does === 'aside')) continue;
    const wanted = kind === 'on-on' ? lastOf : firstOf;
    waits.push({ step: wanted(day, first), why: kind === 'off-on' ? 'in-the-way' : 'rug' });
  }
  const beside = end && !unit.isRug ? (besideOf(day, k, end, ahead) ?? (ahead && besideOf(day, k, end, null))) : null;
  const first = beside?.unit == null ? null : lastOf(day, beside.unit);
  if (first !== null && !waits.some(({ step }) => step === first)) waits.push({ step: first, why: 'beside' });
  for (const step of leftBefore(day, k, index, does))
    if (!waits.some((wait) => wait.step === step)) waits.push({ step, why: 'in-the-way' });
  const isTall = (size?.height ?? 0) >= TWO_PEOPLE.high || size?.kind === 'shelf';
  const unfasten = does === 'back' || !lead.before ? null : unfastenOf(lead.before);
  return {
    ...plain,
    id: stepId(does, lead.id),
    does,
    unit: index,
    pieces,
    path,
    stands: end,
    by: beside?.by ?? null,
    isLarge,
    people: isLarge || unfasten === 'yes' ? 2 : 1,
    unfasten,
    fasten: does === 'aside' || !lead.after ? null : fastenOf(lead.after, isTall),
    overlaps: does === 'aside' || does === 'out' ? [] : overlapsOf(day, unit),
    waits,
  };
}

const carried = (start: SceneBody, end: SceneBody): MovePath => ({
  how: 'carry',
  by: { x: end.center.x - start.center.x, y: end.center.y - start.center.y } satisfies Point,
});

const unfastenOf = ({ anchored, kind }: NonNullable<PieceChange['before']>): MoveStep['unfasten'] =>
  anchored ? 'yes' : kind === 'shelf' && anchored === null ? 'look' : null;

function fastenOf({ anchored, kind }: NonNullable<PieceChange['after']>, isTall: boolean): MoveStep['fasten'] {
  if (anchored) return 'yes';
  if (!isTall || kind === 'rug') return null;
  return anchored === null ? 'look' : 'loose';
}

/** Steps by which others left the floor that a unit is set down on: for what is set aside no precedence says so. */
function leftBefore(day: Day, k: number, index: number, does: UnitEvent['does']): string[] {
  const { units, sequence } = day;
  const unit = units[index] as MoveUnit;
  if (unit.isRug || does === 'out') return [];
  const set = does === 'aside' ? (sequence.places.get(index) ?? []) : unit.to;
  return sequence.events.slice(0, k).flatMap((event) => {
    const other = units[event.unit] as MoveUnit;
    if (event.unit === index || other.isRug) return [];
    const left = event.does === 'back' ? (sequence.places.get(event.unit) ?? []) : other.from;
    return left.some((a) => set.some((b) => clashes(a, b))) ? [stepId(event.does, leadOf(day, event.unit))] : [];
  });
}

const stepId = (does: UnitEvent['does'], piece: string): string => `${does}:${piece}`;
const leadOf = ({ units }: Day, unit: number): string => units[unit]?.id ?? '';
function firstOf(day: Day, unit: number): string {
  const event = day.sequence.events.find((one) => one.unit === unit);
  return stepId(event?.does ?? 'move', leadOf(day, unit));
}
function lastOf(day: Day, unit: number): string {
  const event = day.sequence.events.findLast((one) => one.unit === unit);
  return stepId(event?.does ?? 'move', leadOf(day, unit));
}

/** All that stands while the k-th event goes on, but for its own unit and rugs. */
function standingDuring({ units, sequence, floor }: Day, k: number): SceneBody[] {
  const now = units.map((unit) => unit.from);
  for (const { unit, does } of sequence.events.slice(0, k)) {
    const one = units[unit] as MoveUnit;
    now[unit] = does === 'aside' ? [...(sequence.places.get(unit) ?? [])] : does === 'out' ? [] : one.to;
  }
  const own = sequence.events[k]?.unit;
  return [...floor.staying, ...now.flatMap((bodies, unit) => (unit === own || units[unit]?.isRug ? [] : bodies))];
}

/** mm: by what stays a place this near is found well enough */
const WELL_NAMED = 600;

/**
 * What is measured from when a piece is set down: a wall or what stays where it is; else what came to its place by then (`unit`),
 * which the step then waits for. Never what still moves.
 */
function besideOf(day: Day, k: number, end: SceneBody, ahead: Point | null): { by: StandsBy; unit: number | null } | null {
  const { units, sequence, from, to } = day;
  const own = sequence.events[k]?.unit;
  const moved = new Set(units.flatMap((unit) => unit.to));
  const byStaying = standsBy(
    end,
    to.bodies.filter((body) => !moved.has(body)),
    from.room,
    ahead,
  );
  if (byStaying && byStaying.gap <= WELL_NAMED) return { by: byStaying, unit: null };
  const came = new Set(
    sequence.events.slice(0, k).flatMap(({ unit, does }) => (does === 'aside' || does === 'out' || unit === own ? [] : [unit])),
  );
  const there = units.flatMap((unit, index) => (came.has(index) && !unit.isRug ? unit.to : []));
  const byArrived = standsBy(end, there, from.room, ahead);
  if (byArrived?.kind === 'piece' && byArrived.gap < (byStaying?.gap ?? Infinity))
    return { by: byArrived, unit: units.findIndex((unit) => unit.to.some(({ id }) => id === byArrived.id)) };
  return byStaying && { by: byStaying, unit: null };
}

function overlapsOf({ units, floor }: Day, unit: MoveUnit): string[] {
  const others = [...floor.staying, ...units.flatMap((other) => (other === unit || other.isRug ? [] : other.to))];
  return [...new Set(others.filter((other) => unit.to.some((body) => clashes(body, other))).map(({ id }) => id))];
}

/** Shelves together in one step as long as there are not too many trays for it. */
function chunked(shelves: readonly string[], trays: (shelf: string) => number): string[][] {
  const chunks: string[][] = [];
  let count = Infinity;
  for (const shelf of shelves) {
    const more = trays(shelf);
    if (count + more > TRAYS_A_STEP) {
      chunks.push([shelf]);
      count = more;
    } else {
      chunks.at(-1)?.push(shelf);
      count += more;
    }
  }
  return chunks;
}
